import type { PlugInBarrel } from './matched.ts';

/** The rule of the ranking in one line. */
export const usableFirstText = 'Pairs whose plug and barrel must not meet stand behind all that may.';

/** For sorting: what must not meet stands behind what may, however much light it would carry; 0 where both are alike. */
export function usableFirst(
  a: { readonly connector: PlugInBarrel },
  b: { readonly connector: PlugInBarrel },
): number {
  return Number(a.connector === 'must not meet') - Number(b.connector === 'must not meet');
}
