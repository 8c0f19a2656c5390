/**
 * A part's name as it stands in ids, such as `mirror-M1`: its letters and digits of any script, with a hyphen for
 * whatever lies between them. Empty for a name without any.
 */
export function partId(name: string): string {
  return name
    .normalize('NFC')
    .replace(/[^\p{L}\p{M}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/gu, '');
}
