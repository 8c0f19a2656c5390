/** From small to large, a thousand apart. */
const prefixes = ['p', 'n', 'µ', 'm', '', 'k'] as const;

const prefixed = /^([pnµμumk]?)(m|W|rad|s|A|V|J)$/u;

/**
 * The units a thousand times smaller (or larger), a million times, and so on: what was probably meant where a number
 * is far out of its range, for the usual slip is `520 µm` for `520 nm`. Nearest first; none for a unit without prefixes.
 */
export function slippedUnits(unit: string, way: 'smaller' | 'larger'): readonly string[] {
  if (unit === 'dB/m' && way === 'smaller') return ['dB/km'];
  if (unit === 'dB/km' && way === 'larger') return ['dB/m'];
  const [, prefix, base] = prefixed.exec(unit) ?? [];
  const here = prefixes.findIndex((known) => known === (prefix ?? '').replace(/[μu]/u, 'µ'));
  if (base === undefined || here < 0) return [];
  const others = way === 'smaller' ? prefixes.slice(0, here).toReversed() : prefixes.slice(here + 1);
  return others.map((other) => `${other}${base}`);
}
