/** Limits below 400 nm and beyond 1400 nm, where light does not reach the retina. The skin has the same. */
import type { Basis } from './evidence.ts';
import { between, doseRow, irradianceRow, type LimitRow, type RowFrame } from './limit-row.ts';
import { directiveLongExposures, directiveTable, icnirp2013, type LimitSet } from './limit-set.ts';

const longest = 3e4;
const shortest = 100e-15;

const dailyDose: Basis = {
  evidence: 'from memory',
  source: 'ICNIRP: a dose for the day (IEC 60825-1 allows 10 W/m² beyond 1000 s; the dose is kept)',
};
const heldIrradiance: Basis = {
  evidence: 'from memory',
  source: 'ICNIRP: below 1 ns the irradiance is held at that of 1 ns, which is what the Directive prints',
};

function rowsFrom(short: Basis, long: Basis, held: Basis): readonly LimitRow[] {
  const infrared = (from: number, to: number, basis: Basis): RowFrame => ({
    band: [from, to],
    harm: 'front of the eye, infrared',
    basis,
  });
  const ultraviolet = (basis: Basis): RowFrame => ({
    band: [315, 400],
    harm: 'front of the eye, ultraviolet',
    basis,
  });
  return [
    doseRow(ultraviolet(short), between(1e-9, 10), 5600, 0.25),
    doseRow(ultraviolet(dailyDose), between(10, longest), 1e4),
    ...[infrared(1400, 1500, short), infrared(1800, 2600, short)].flatMap((frame) => [
      irradianceRow({ ...frame, basis: held }, between(shortest, 1e-9), 1e12),
      doseRow(frame, between(1e-9, 1e-3), 1e3),
      doseRow(frame, between(1e-3, 10), 5600, 0.25),
    ]),
    irradianceRow(infrared(1500, 1800, held), between(shortest, 1e-9), 1e13),
    doseRow(infrared(1500, 1800, short), between(1e-9, 10), 1e4),
    doseRow(infrared(2600, 1e6, short), between(1e-9, 100e-9), 100),
    doseRow(infrared(2600, 1e6, short), between(100e-9, 10), 5600, 0.25),
    irradianceRow(infrared(1400, 1e6, long), between(10, longest), 1000),
  ];
}

const directive = directiveTable('2.2');

/**
 * Every row for the front of the eye, 315 to 400 nm and 1400 nm to 1 mm. Nothing is known here of pulses below 1 ns at
 * 315 to 400 nm and beyond 2600 nm.
 *
 * @source Directive 2006/25/EC, Annex II, table 2.2: read, up to 10 s; from memory beyond. `icnirp2013`: the same
 *   numbers, from memory
 */
export const frontRows: Readonly<Record<LimitSet, readonly LimitRow[]>> = {
  eu2006: rowsFrom(directive, directiveLongExposures, directive),
  icnirp2013: rowsFrom(icnirp2013, icnirp2013, heldIrradiance),
};
