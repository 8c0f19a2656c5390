/** Limits for the retina, 400 to 1400 nm, averaged over 7 mm: the tables of both sets, row by row. */

import type { TimeRange } from './closed-range.ts';
import { breakpointT2 } from './correction-factors.ts';
import { countedAngle, smallestCountedAngle } from './exposure.ts';
import { between, doseRow, irradianceRow, type LimitRow, type RowFrame } from './limit-row.ts';
import { directiveLongExposures, directiveTable, icnirp2013, type LimitSet } from './limit-set.ts';

const heat = 'heat on the retina';
const shortest = 100e-15;
const longest = 3e4;

/** The three bands of the tables: visible, near infrared, and where the eye's water begins to absorb. */
const bandsOf = (basis: RowFrame['basis']) => ({
  visible: { band: [400, 700], harm: heat, basis, factors: ['C_E'] } satisfies RowFrame,
  near: { band: [700, 1050], harm: heat, basis, factors: ['C_A', 'C_E'] } satisfies RowFrame,
  beyond: { band: [1050, 1400], harm: heat, basis, factors: ['C_C', 'C_E'] } satisfies RowFrame,
});

const modern = bandsOf(icnirp2013);
const european = bandsOf(directiveTable('2.2'));

/**
 * At 1 ns this row would still say 4 % less than the row that begins there. A textbook's printed example for exactly 1 ns
 * has the later row, so this one ends before it. (`icnirp2013` is stricter at 1 ns, and governs.)
 */
const upTo1ns: TimeRange = { from: 10e-12, to: 1e-9, openEnd: true };

/** Exposures up to 10 s. */
const shortRows: Readonly<Record<LimitSet, readonly LimitRow[]>> = {
  icnirp2013: [
    ...[modern.visible, modern.near].flatMap((frame) => [
      doseRow(frame, between(shortest, 10e-12), 1e-3),
      doseRow(frame, between(10e-12, 5e-6), 2e-3),
      doseRow(frame, between(5e-6, 10), 18, 0.75),
    ]),
    doseRow(modern.beyond, between(shortest, 10e-12), 1e-2),
    doseRow(modern.beyond, between(10e-12, 13e-6), 2e-2),
    doseRow(modern.beyond, between(13e-6, 10), 90, 0.75),
  ],
  eu2006: [
    ...[european.visible, european.near].flatMap((frame) => [
      doseRow(frame, between(shortest, 10e-12), 1.5e-4),
      doseRow(frame, upTo1ns, 2.7e4, 0.75),
      doseRow(frame, between(1e-9, 18e-6), 5e-3),
      doseRow(frame, between(18e-6, 10), 18, 0.75),
    ]),
    doseRow(european.beyond, between(shortest, 10e-12), 1.5e-3),
    doseRow(european.beyond, upTo1ns, 2.7e5, 0.75),
    doseRow(european.beyond, between(1e-9, 50e-6), 5e-2),
    doseRow(european.beyond, between(50e-6, 10), 90, 0.75),
  ],
};

/**
 * The time T_min or T_i, s, within which pulses count as one on the retina; two on the boundary at 1050 nm.
 *
 * @param nm 400 to 1400 nm
 * @source the ends of the rows above
 */
export function confluenceTimes(set: LimitSet, nm: number): readonly number[] {
  const [near, beyond] = set === 'eu2006' ? [18e-6, 50e-6] : [5e-6, 13e-6];
  return [...(nm <= 1050 ? [near] : []), ...(nm >= 1050 ? [beyond] : [])];
}

/** Heat from a point, from 10 s on: one irradiance. */
const pointHeatRow = (basis: RowFrame['basis']): LimitRow =>
  irradianceRow({ band: [400, 1400], harm: heat, basis, factors: ['C_A', 'C_C'] }, between(10, longest), 10);

/** Heat from an extended source: the short formula goes on to T_2, and then stays level. */
function extendedHeatRows(basis: RowFrame['basis'], sourceAngle: number): readonly LimitRow[] {
  const frame: RowFrame = { band: [400, 1400], harm: heat, basis, factors: ['C_A', 'C_C', 'C_E'] };
  const end = breakpointT2(sourceAngle).value;
  const levelled = irradianceRow(frame, between(end, longest), 18 * end ** -0.25);
  return [
    doseRow(frame, between(10, end), 18, 0.75),
    { ...levelled, formula: '18 T_2^-0.25 C_A C_C C_E W/m²' },
  ];
}

/** Photochemistry is judged apart from heat, and the lower limit governs: BGI 832, table 1, read. */
function photochemicalRows(basis: RowFrame['basis']): readonly LimitRow[] {
  const frame: RowFrame = {
    band: [400, 600],
    harm: 'photochemistry on the retina',
    basis,
    factors: ['C_B'],
  };
  return [doseRow(frame, between(10, 100), 100), irradianceRow(frame, between(100, longest), 1)];
}

const longBasis = { eu2006: directiveLongExposures, icnirp2013 } as const;

const blueRows: Readonly<Record<LimitSet, readonly LimitRow[]>> = {
  eu2006: photochemicalRows(longBasis.eu2006),
  icnirp2013: photochemicalRows(longBasis.icnirp2013),
};
const pointRows: Readonly<Record<LimitSet, readonly LimitRow[]>> = {
  eu2006: [...shortRows.eu2006, pointHeatRow(longBasis.eu2006), ...blueRows.eu2006],
  icnirp2013: [...shortRows.icnirp2013, pointHeatRow(longBasis.icnirp2013), ...blueRows.icnirp2013],
};

/**
 * Every row for the retina.
 *
 * @param sourceAngle full angle, rad; `null`: unknown, so a point
 * @source Directive 2006/25/EC, Annex II, table 2.2: read; table 2.3 (10 s and longer): from memory. ICNIRP, Health Phys.
 *   105, 271 (2013): from memory
 */
export function retinaRows(set: LimitSet, sourceAngle: number | null): readonly LimitRow[] {
  const counted = countedAngle(sourceAngle);
  return counted <= smallestCountedAngle
    ? pointRows[set]
    : [...shortRows[set], ...extendedHeatRows(longBasis[set], counted), ...blueRows[set]];
}
