import { OutOfRange } from '../out-of-range.ts';
import { stopArea } from './averaging-stop.ts';
import { type BeamDefinition, mustBePower } from './beam-definition.ts';
import { type Basis, gaussianMathematics, joinBases } from './evidence.ts';
import { smallestCountedAngle } from './exposure.ts';
import { type IrradianceLimit, powerAtLimit } from './exposure-limit.ts';

/** From where a distance counts. */
export type DistanceFrom = 'the exit' | 'the focus' | 'the fibre end' | 'the lens' | 'the spot';

/**
 * How the irradiance was judged. `peak irradiance` is the usual one and never the shorter; it is wrong for a beam that is
 * under the limit everywhere, which is therefore asked first.
 */
export type DistanceForm = 'under the limit everywhere' | 'peak irradiance' | 'averaged over the stop';

/** Up to where a beam is above a limit. An estimate. */
export interface HazardDistance {
  /** m; 0: nowhere above the limit, for the time it was computed for. */
  readonly distance: number;
  readonly from: DistanceFrom;
  readonly form: DistanceForm;
  /** Where the widths and angles that went in were read; they were converted. */
  readonly beamDefinition: BeamDefinition;
  /** W; of a diffuse spot what counts of it. */
  readonly power: number;
  /** With its set, exposure time and wavelength. */
  readonly limit: IrradianceLimit;
  readonly basis: readonly Basis[];
}

/** A beam of this power (W), judged by this limit. */
export interface Judged {
  readonly power: number;
  readonly limit: IrradianceLimit;
}

/** What a geometry knows about itself, and how it gets from a beam's 1/e diameter to a distance. */
export interface Geometry {
  readonly from: DistanceFrom;
  readonly beamDefinition: BeamDefinition;
  readonly form: 'peak irradiance' | 'averaged over the stop';
  readonly basis: readonly Basis[];
  /** A laser beam or a glass fibre's end is seen as a point, whatever its width: no limit is relaxed for it. */
  readonly isPoint: boolean;
  /** Distance, m, at which the beam is this wide (1/e, m); nought or less where it always is wider. */
  readonly distanceAt: (diameter1e: number) => number;
}

/** Whether all the power through the averaging stop would stay under the limit: then no distance is needed. */
export function isUnderLimitEverywhere({ power, limit }: Judged): boolean {
  return power <= powerAtLimit(limit);
}

/**
 * 1/e diameter, m, at which the peak irradiance of a Gaussian meets the limit: √(4P/(π·limit)).
 *
 * @source identity of Gaussian beams
 */
export function diameter1eAtPeakLimit({ power, limit }: Judged): number {
  return Math.sqrt((4 * power) / (Math.PI * limit.irradiance));
}

/**
 * 1/e diameter, m, at which the irradiance averaged over the stop meets the limit; 0 if no beam of this power does.
 *
 * @source identity of Gaussian beams: P(1 − exp(−(stop/d)²)) = limit · area of the stop
 */
export function diameter1eAtAveragedLimit({ power, limit }: Judged): number {
  const share = (limit.irradiance * stopArea(limit.averagingDiameter)) / power;
  return share >= 1 ? 0 : limit.averagingDiameter / Math.sqrt(-Math.log1p(-share));
}

/** The distance of one geometry: nought where the whole beam is under the limit, which is asked first, and never negative. */
export function distanceIn(judged: Judged, geometry: Geometry): HazardDistance {
  const { power, limit } = judged;
  mustBePower(power);
  mustBeLimit(limit, geometry);
  const { from, beamDefinition, basis, form } = geometry;
  const facts = { from, beamDefinition, power, limit };
  const whole = joinBases(basis, limit.basis);
  if (isUnderLimitEverywhere(judged)) {
    return {
      ...facts,
      distance: 0,
      form: 'under the limit everywhere',
      basis: joinBases([gaussianMathematics], whole),
    };
  }
  const diameter =
    form === 'peak irradiance' ? diameter1eAtPeakLimit(judged) : diameter1eAtAveragedLimit(judged);
  const reached = geometry.distanceAt(diameter);
  return { ...facts, distance: Math.max(0, reached), form, basis: whole };
}

function mustBeLimit(
  { irradiance, averagingDiameter, sourceAngle, tissue }: IrradianceLimit,
  { isPoint, from }: Geometry,
): void {
  if (isPoint && tissue === 'eye' && sourceAngle > smallestCountedAngle) {
    throw new OutOfRange({
      where: 'limit.sourceAngle',
      what: `the limit was relaxed for a source of ${sourceAngle} rad, and light from ${from} is seen as a point`,
      mend: 'Compute the limit with the source angle null.',
    });
  }
  if (irradiance > 0 && averagingDiameter > 0) return;
  throw new OutOfRange({
    where: 'limit',
    what: `${irradiance} W/m² over ${averagingDiameter} m is no limit`,
    mend: 'Take it from governingLimit.',
  });
}

/** The longest of the distances that several limits give: of both sets, of several times, of several lines. */
export function longestDistance(
  limits: readonly IrradianceLimit[],
  distanceFor: (limit: IrradianceLimit) => HazardDistance,
): HazardDistance {
  const [first, ...others] = limits.map(distanceFor);
  if (first === undefined) {
    throw new OutOfRange({
      where: 'limits',
      what: 'there is no limit to judge by',
      mend: 'Give at least one limit.',
    });
  }
  return others.reduce((longest, one) => (one.distance > longest.distance ? one : longest), first);
}
