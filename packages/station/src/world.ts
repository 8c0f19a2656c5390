/** Time and chance, handed in by `main` and faked by tests. */
export interface World {
  readonly now: () => Date;
  /** From a source fit for secrets. */
  readonly randomBytes: (count: number) => Uint8Array;
}

/**
 * A new name for good.
 *
 * @source RFC 9562, 5.4: version 4 in the upper half of byte 6, variant 10 in the upper bits of byte 8; from memory
 */
export function newId({ randomBytes }: World): string {
  const bytes = Buffer.from(randomBytes(16));
  bytes[6] = (bytes[6]! & 0x0f) | 0x40;
  bytes[8] = (bytes[8]! & 0x3f) | 0x80;
  const hex = bytes.toString('hex');
  return [hex.slice(0, 8), hex.slice(8, 12), hex.slice(12, 16), hex.slice(16, 20), hex.slice(20)].join('-');
}

/** Something nobody can guess, 256 bits, in letters fit for a cookie. */
export const newSecret = ({ randomBytes }: World): string =>
  Buffer.from(randomBytes(32)).toString('base64url');
