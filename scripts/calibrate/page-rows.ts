import { type Coverage, heldShare } from './coverage.ts';
import type { Simulator } from './simulated.ts';

/** What a calibration came to, as a row of a table in docs/gauges.md. */
export function calibrationRow({ gauge, what }: Simulator, coverages: readonly Coverage[]): string {
  const held = coverages.map(
    (coverage) => `${withoutUnit(coverage.quantity)} ${percent(heldShare(coverage))} %`,
  );
  // a round spot has no azimuth, which is no failure
  const refused = coverages
    .filter(({ quantity }) => !quantity.startsWith('azimuth'))
    .map(({ refused, sets }) => refused / sets);
  return `| \`${gauge}\` | ${what} | ${held.join(', ')} | ${percent(Math.max(...refused))} % |`;
}

/** The whole table, with its head. */
export function calibrationTable(sets: number, rows: readonly string[]): string {
  return [
    `Of ${sets} sets a gauge, seeded:`,
    '',
    '| gauge | simulated | interval holds the truth | no figure |',
    '|---|---|---|---|',
    ...rows,
  ].join('\n');
}

const percent = (share: number): string => (100 * share).toFixed(1);

const withoutUnit = (quantity: string): string => quantity.replace(/_(m|rad|W|s|px)$/u, '');
