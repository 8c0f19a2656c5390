import { OutOfRange } from '../out-of-range.ts';
import { type AveragingStop, averagingStop, stopArea } from './averaging-stop.ts';
import { nanometres } from './closed-range.ts';
import { correctionA, correctionB, correctionC, correctionE, type Factor } from './correction-factors.ts';
import { type Basis, joinBases } from './evidence.ts';
import { countedAngle, type Exposure, mustBeExposure } from './exposure.ts';
import { frontRows } from './front-rows.ts';
import { type FactorSymbol, type Harm, type LimitRow, rowsAt } from './limit-row.ts';
import type { LimitSet, Tissue } from './limit-set.ts';
import { retinaRows } from './retina-rows.ts';
import { corneaRows, skinRows } from './skin-rows.ts';

/** What every limit says about itself. */
export interface LimitFacts {
  readonly set: LimitSet;
  readonly tissue: Tissue;
  /** Vacuum wavelength, m. */
  readonly wavelength: number;
  /** s. */
  readonly exposureTime: number;
  /** The full angle of the source the limit was computed for, rad; 1.5 mrad stands for a point. */
  readonly sourceAngle: number;
  /** What the limit protects, and from what. */
  readonly harm: Harm;
  /** The beam is judged by its power through a round stop of this diameter, m, over the stop's area. */
  readonly averagingDiameter: number;
  /** The table's formula, as people write it. */
  readonly formula: string;
  readonly basis: readonly Basis[];
}

/** A limit with an irradiance: of one exposure, or of a train of pulses on average. W/m². */
export interface IrradianceLimit extends LimitFacts {
  readonly irradiance: number;
}

/** What one exposure may amount to. An estimate, averaged over the stop. */
export interface ExposureLimit extends IrradianceLimit {
  /** J/m²; the irradiance times the exposure time. */
  readonly radiantExposure: number;
}

/**
 * The limit of one set: the lowest of all that apply.
 *
 * @throws {OutOfRange} outside what the tables cover
 * @source as `limitsByHarm`
 */
export function exposureLimit(set: LimitSet, exposure: Exposure): ExposureLimit {
  const [first, ...others] = limitsByHarm(set, exposure);
  return others.reduce((least, limit) => (limit.irradiance < least.irradiance ? limit : least), first!);
}

/**
 * What applies, one limit for each thing that is protected: exposures of several wavelengths add up within each.
 * At a shared boundary of a table the stricter row is taken.
 *
 * @throws {OutOfRange} outside 315 nm to 1 mm, 100 fs to 30 000 s, and where the tables are empty: below 1 ns at 315 to
 *   400 nm and beyond 2600 nm
 * @source Directive 2006/25/EC, Annex II, tables 2.2 to 2.5 (2.3 from memory); ICNIRP, Health Phys. 105, 271 (2013), from
 *   memory. Every limit names its own
 */
export function limitsByHarm(set: LimitSet, exposure: Exposure): readonly ExposureLimit[] {
  mustBeExposure(exposure);
  const { tissue, wavelength, exposureTime } = exposure;
  const rows = rowsAt(rowsFor(set, exposure), nanometres(wavelength), exposureTime);
  if (rows.length === 0) {
    throw new OutOfRange({
      where: 'exposureTime',
      what: `${exposureTime} s at ${nanometres(wavelength)} nm is outside what this tool covers: there it begins at 1 ns`,
      mend: 'Ask for 1 ns or longer, and ask your laser safety officer about shorter pulses.',
    });
  }
  const stop = averagingStop(set, tissue, wavelength, exposureTime);
  const lowest = new Map<Harm, ExposureLimit>();
  for (const row of rows) {
    const limit = limitOf(row, set, exposure, stop);
    const known = lowest.get(limit.harm);
    if (known === undefined || limit.irradiance < known.irradiance) lowest.set(limit.harm, limit);
  }
  return [...lowest.values()];
}

function rowsFor(set: LimitSet, { tissue, sourceAngle }: Exposure): readonly LimitRow[] {
  switch (tissue) {
    case 'eye':
      return [
        ...retinaRows(set, sourceAngle),
        ...(set === 'icnirp2013' ? corneaRows : []),
        ...frontRows[set],
      ];
    case 'skin':
      return [...skinRows[set], ...frontRows[set].map((row): LimitRow => ({ ...row, harm: 'skin' }))];
  }
}

function limitOf(row: LimitRow, set: LimitSet, exposure: Exposure, stop: AveragingStop): ExposureLimit {
  const { tissue, wavelength, exposureTime, sourceAngle } = exposure;
  const factors = row.factors.map((symbol) => factorNamed(symbol, set, exposure));
  const product = factors.reduce((all, { value }) => all * value, 1);
  // An irradiance stays the printed number, and is not put together again from a dose.
  const levelled = row.exponent === 1;
  const dose = row.coefficient * product * exposureTime ** row.exponent;
  return {
    set,
    tissue,
    wavelength,
    exposureTime,
    sourceAngle: countedAngle(sourceAngle),
    harm: row.harm,
    radiantExposure: dose,
    irradiance: levelled ? row.coefficient * product : dose / exposureTime,
    averagingDiameter: Math.min(stop.diameter, row.ownStopDiameter ?? Infinity),
    formula: row.formula,
    // a factor of 1 decides nothing
    basis: joinBases(
      [row.basis],
      factors.filter(({ value }) => value !== 1).map(({ basis }) => basis),
      [stop.basis],
    ),
  };
}

function factorNamed(symbol: FactorSymbol, set: LimitSet, exposure: Exposure): Factor {
  switch (symbol) {
    case 'C_A':
      return correctionA(exposure.wavelength);
    case 'C_B':
      return correctionB(exposure.wavelength);
    case 'C_C':
      return correctionC(set, exposure.wavelength);
    case 'C_E':
      return correctionE(set, exposure.sourceAngle, exposure.exposureTime);
  }
}

/**
 * The power, W, that stays at the limit even if all of it goes through the averaging stop: irradiance times its area.
 * Below it a beam is under the limit at every distance, for the time the limit was computed for.
 *
 * @source the definition of the averaging stop, as `averagingStop`
 */
export function powerAtLimit({ irradiance, averagingDiameter }: IrradianceLimit): number {
  return irradiance * stopArea(averagingDiameter);
}
