/** Limits for the skin, 400 to 1400 nm, averaged over 3.5 mm. Other bands: those of the front of the eye. */
import { skinStopDiameter } from './averaging-stop.ts';
import { doseRow, irradianceRow, type LimitRow, type RowFrame } from './limit-row.ts';
import { directiveTable, icnirp2013, type LimitSet } from './limit-set.ts';

function rowsFrom(frame: RowFrame): readonly LimitRow[] {
  return [
    irradianceRow(frame, { from: 100e-15, to: 1e-9 }, 2e11),
    doseRow(frame, { from: 1e-9, to: 100e-9 }, 200),
    // At 10 s this would still say 1956 W/m², 2 % less than the row that begins there. The reference for exactly 10 s has
    // the later row, so this one ends before it.
    doseRow(frame, { from: 100e-9, to: 10, openEnd: true }, 1.1e4, 0.25),
    irradianceRow(frame, { from: 10, to: 3e4 }, 2e3),
  ];
}

const skinOf = (basis: RowFrame['basis']): readonly LimitRow[] =>
  rowsFrom({ band: [400, 1400], harm: 'skin', basis, factors: ['C_A'] });

/**
 * Every row for the skin between 400 and 1400 nm. For an exposed area up to 0.01 m².
 *
 * @source Directive 2006/25/EC, Annex II, table 2.4: read; `icnirp2013`: the same numbers, from memory
 */
export const skinRows: Readonly<Record<LimitSet, readonly LimitRow[]>> = {
  eu2006: skinOf(directiveTable('2.4')),
  icnirp2013: skinOf(icnirp2013),
};

/**
 * From 1250 to 1400 nm the retinal limits of `icnirp2013` grow past what cornea and lens stand: the skin's limit caps
 * them, at every exposure time, and brings its smaller averaging stop with it.
 *
 * @source ICNIRP, Health Phys. 105, 271 (2013): from memory
 */
export const corneaRows: readonly LimitRow[] = rowsFrom({
  band: [1250, 1400],
  harm: 'front of the eye, infrared',
  basis: icnirp2013,
  factors: ['C_A'],
  ownStopDiameter: skinStopDiameter,
});
