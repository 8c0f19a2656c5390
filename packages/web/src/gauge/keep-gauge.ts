import { gaugeEntryKind, gaugePieceKind, type KeptPicture, piecesOf, type Sheet } from '@coreward/bench';
import { routes } from '@coreward/contract';
import { ask } from '../keeping/client.ts';
import type { World } from '../keeping/world.ts';

/** Readings up to so many characters stand in the entry itself; longer ones in pieces of that size. */
const most = 30_000;

export interface ToKeep {
  readonly gauge: string;
  /** What came of it, in words. */
  readonly text: string;
  readonly sheet: Sheet;
  readonly picture: File | null;
  readonly reverse: File | null;
  readonly went: string | null;
  /** The launch it was done for. */
  readonly launch: string | null;
}

/**
 * Puts a gauge with every one of its readings into the bench book.
 *
 * @throws {NotDone} @throws {NoAnswer} as `ask` does; pieces that were already taken stay, and nothing names them
 */
export async function keepGauge(world: World, toKeep: ToKeep): Promise<void> {
  const { gauge, text, sheet, picture, reverse, went, launch } = toKeep;
  const enter = async (kind: string, data: { readonly [key: string]: unknown }): Promise<string> => {
    const write = world.newId();
    await ask(world, routes.writeEntry, {}, { write, kind, launch, data: data as never });
    return write;
  };
  const pieces: string[] = [];
  if (sheet.text.length > most) {
    for (const piece of piecesOf(sheet.text, most)) pieces.push(await enter(gaugePieceKind, { piece }));
  }
  await enter(gaugeEntryKind, {
    gauge,
    text,
    settings: sheet.settings,
    readings: pieces.length > 0 ? null : sheet.text,
    pieces,
    picture: picture === null ? null : await digestOf(picture),
    // one that takes a single picture has no second to speak of
    ...(reverse === null ? {} : { reversePicture: await digestOf(reverse) }),
    went,
  });
}

/** Over plain http from another device the browser has no digest: the name and size stay. */
async function digestOf(file: File): Promise<KeptPicture> {
  const subtle = globalThis.crypto.subtle as SubtleCrypto | undefined;
  const digest =
    subtle === undefined ? new ArrayBuffer(0) : await subtle.digest('SHA-256', await file.arrayBuffer());
  const sha256 = [...new Uint8Array(digest)].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  return { name: file.name, bytes: file.size, sha256 };
}
