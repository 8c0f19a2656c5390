import type { LinkTrouble } from './connection.ts';

interface Known {
  readonly signs: RegExp;
  readonly what: string;
  readonly mend: string;
  readonly hand: boolean;
}

/** By the system's code, or where a port has none, by its words. */
const known: readonly Known[] = [
  {
    signs: /ENOENT|No such file|cannot find|File not found/iu,
    what: 'there is no such port',
    mend: 'Plug the device in.',
    hand: false,
  },
  {
    signs: /EACCES|Permission denied|Access denied/iu,
    what: 'you may not open this port, or another program has it',
    mend: 'Close other programs that use it; on Linux, become a member of the group that owns it (often `dialout`).',
    hand: true,
  },
  {
    signs: /EBUSY|Cannot lock port|temporarily unavailable/iu,
    what: 'another program has this port',
    mend: 'Close the other program, or switch off the other instrument that uses it.',
    hand: true,
  },
  {
    signs: /ECONNREFUSED/u,
    what: 'nobody answers at this address',
    mend: 'Switch the device on.',
    hand: false,
  },
  {
    signs: /ENOTFOUND|EAI_AGAIN/u,
    what: 'there is no such address',
    mend: 'Write the address that the device itself shows.',
    hand: true,
  },
  {
    signs: /ETIMEDOUT|EHOSTUNREACH|ENETUNREACH/u,
    what: 'the device cannot be reached',
    mend: 'Check its cable and its address.',
    hand: false,
  },
];

/** What an error of a port or an address means to whoever has the cable in his hand. */
export function linkTrouble(where: string, error: Error | null): LinkTrouble {
  const code = (error as NodeJS.ErrnoException | null)?.code ?? '';
  const found = known.find(({ signs }) => signs.test(`${code} ${error?.message ?? ''}`));
  if (found !== undefined) return { parts: { where, what: found.what, mend: found.mend }, hand: found.hand };
  return {
    parts: { where, what: 'the device is gone', mend: 'Plug it in again; it is opened by itself.' },
    hand: false,
  };
}

/** A device that is there and says nothing of use. */
export const saysNothing = (where: string, what: string): LinkTrouble => ({
  parts: { where, what, mend: 'Check that it is switched on and how it is set.' },
  hand: false,
});
