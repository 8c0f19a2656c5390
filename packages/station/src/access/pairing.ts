import { timingSafeEqual } from 'node:crypto';
import type { World } from '../world.ts';
import { hashOf } from './session.ts';

/** A code works for so long, ms. */
export const codeLife = 5 * 60_000;
/** So many wrong tries burn a code: of 32⁸ ≈ 10¹² codes nobody guesses one in five. */
export const mostTries = 5;

/** 32 letters and digits, none of which is mistaken for another: no 0, O, 1, I. */
const letters = '23456789ABCDEFGHJKLMNPQRSTUVWXYZ';
const codeLength = 8;

/** A code, and until when it works. */
export interface PairingCode {
  readonly code: string;
  readonly expires: Date;
}

/** The one pairing code that is out, if any. It is kept in memory alone and ends with the station. */
export class Pairing {
  readonly #world: World;
  #out: (PairingCode & { readonly opened: Date; readonly tries: number }) | null = null;

  constructor(world: World) {
    this.#world = world;
  }

  /** A fresh code; any earlier one is burnt by it. */
  open(): PairingCode {
    // 256 is 8 × 32: every letter is as likely
    const code = [...this.#world.randomBytes(codeLength)]
      .map((byte) => letters[byte % letters.length])
      .join('');
    const opened = this.#world.now();
    this.#out = { code, opened, expires: new Date(opened.getTime() + codeLife), tries: 0 };
    return this.#out;
  }

  /** Whether this is the code. If it is, it is burnt; if not, the code has one try less. */
  use(code: string): boolean {
    const out = this.#out;
    if (out === null) return false;
    const now = this.#world.now();
    // a clock that was set back cannot tell how old the code is
    if (now >= out.expires || now < out.opened) {
      this.#out = null;
      return false;
    }
    const isRight = timingSafeEqual(hashOf(code), hashOf(out.code));
    this.#out = isRight || out.tries + 1 >= mostTries ? null : { ...out, tries: out.tries + 1 };
    return isRight;
  }
}
