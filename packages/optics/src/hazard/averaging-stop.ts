import { type ClosedRange, holds, nanometres } from './closed-range.ts';
import type { Basis } from './evidence.ts';
import { mustBeCoveredWavelength } from './exposure.ts';
import { directiveTable, type LimitSet, type Tissue } from './limit-set.ts';

/** The round hole over which an exposure is averaged before it is compared with its limit. */
export interface AveragingStop {
  /** Diameter, m. */
  readonly diameter: number;
  readonly basis: Basis;
}

/** 7 mm, whatever the real pupil is. @source BGV B2, annex, table 5: read */
export const eyeStopDiameter = 7e-3;
/** 3.5 mm. @source BGV B2, annex, table 5: read */
export const skinStopDiameter = 3.5e-3;

/** Eyes are taken to be no closer to a source than this, m; a magnifier breaks it. @source BGV B2, annex, 5.1: read */
export const nearestEyeDistance = 0.1;

const limitingApertures: Basis = {
  evidence: 'read',
  source: 'BGV B2 (German regulation on laser radiation), annex, table 5: limiting apertures',
};
const keptBeyond: Basis = {
  evidence: 'proposal',
  source: 'beyond 0.1 mm wavelength the smaller stop of the band before is kept; it is never milder',
};

/** 1 mm at first, then 1.5·t^0.375 mm, 3.5 mm from 10 s on. The rows do not meet; the smaller stop is the stricter one. */
function growingDiameter(set: LimitSet, time: number): number {
  const beginning = set === 'eu2006' ? 0.3 : 0.35;
  const grown = Math.min(3.5e-3, 1.5e-3 * time ** 0.375);
  if (time < beginning) return 1e-3;
  return time === beginning ? Math.min(1e-3, grown) : grown;
}

/**
 * The averaging aperture of an exposure limit. At a shared boundary the smaller one: a narrow beam fills it better.
 *
 * Below 400 nm it stays at 1 mm; newer editions let it grow to 3.5 mm for long exposures.
 *
 * @param wavelength m, 315 nm to 1 mm
 * @param exposureTime s
 * @throws {OutOfRange} outside 315 nm to 1 mm
 * @source BGV B2, annex, table 5: read; `eu2006` begins to grow at 0.3 s (Directive 2006/25/EC: read), `icnirp2013` at 0.35 s
 */
export function averagingStop(
  set: LimitSet,
  tissue: Tissue,
  wavelength: number,
  exposureTime: number,
): AveragingStop {
  mustBeCoveredWavelength(wavelength);
  if (tissue === 'skin') return { diameter: skinStopDiameter, basis: limitingApertures };
  const grown = growingDiameter(set, exposureTime);
  const growing = set === 'eu2006' ? directiveTable('2.2') : limitingApertures;
  const stops: readonly (AveragingStop & { readonly band: ClosedRange })[] = [
    { band: { from: 315, to: 400 }, diameter: 1e-3, basis: limitingApertures },
    { band: { from: 400, to: 1400 }, diameter: eyeStopDiameter, basis: limitingApertures },
    { band: { from: 1400, to: 1e5 }, diameter: grown, basis: growing },
    { band: { from: 1e5, to: 1e6 }, diameter: grown, basis: keptBeyond },
  ];
  const nm = nanometres(wavelength);
  const [first, ...others] = stops.filter(({ band }) => holds(band, nm));
  return others.reduce((least, stop) => (stop.diameter < least.diameter ? stop : least), first!);
}

/** Area of a round stop, m². */
export function stopArea(diameter: number): number {
  return (Math.PI / 4) * diameter ** 2;
}
