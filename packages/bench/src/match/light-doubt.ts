import { asStated, type Draw } from '../forecast/draw.ts';
import { doubtfulIn } from '../forecast/entries-of.ts';
import { radiiOf } from '../forecast/travelling-beam.ts';
import { type Arrival, wayToTheLens } from '../forecast/way-to-the-facet.ts';
import type { Launch } from '../launch/launch.ts';
import { intervalOf, quantileOf } from '../quantity/distribution.ts';
import type { Entry } from '../quantity/quantity.ts';
import { type LogSpread, spreadOfRatios, together } from './log-spread.ts';

/** Where the light of one laser arrives at the end of the path, and how doubtful it is. */
export interface Light {
  readonly arrival: Arrival;
  /** Laser power, and what the path lets through. */
  readonly power: LogSpread;
  readonly path: LogSpread;
  /** The spot behind any lens: 5 to 95 %, half of it, in ln(size), for M² as stated. */
  readonly size: number;
  /** What a doubtful M² does, at its 5 and its 95 % point; one pair of ends for every entry. */
  readonly qualities: readonly (readonly [BeamChange, BeamChange])[];
}

/** What becomes of the spot behind any lens. */
export interface BeamChange {
  /** Added to ln(size). */
  readonly size: number;
  /** M² over the stated one, mean of both axes. */
  readonly m2: number;
}

/** The bench as stated but for one entry, which is at its quantile `p`. */
export const butFor = (entry: Entry, p: number): Draw => {
  const shifted = quantileOf(entry, p);
  return { ...asStated, at: (asked) => (asked === entry ? shifted : asked.value) };
};

/** Half of what lies between the 5 and the 95 % point, in ln. */
export function halfLogWidth(entry: Entry): number {
  const { low, high } = intervalOf(entry, 0.9);
  // a size that might be nothing is as good as unknown
  return low > 0 ? Math.log(high / low) / 2 : 1;
}

/** Follows the light as stated, and again with each doubtful entry at either end. */
export function lightOf(launch: Launch): Light {
  const arrival = wayToTheLens(launch, asStated);
  const paths: LogSpread[] = [];
  const sizes: number[] = [];
  const qualities: [BeamChange, BeamChange][] = [];
  const { laser, path } = launch;
  for (const entry of doubtfulIn({ laser, path })) {
    if (entry === laser.power) continue;
    const ends = [0.05, 0.95].map((p) => wayToTheLens(launch, butFor(entry, p))) as [Arrival, Arrival];
    const through = ends.map((end) => throughPath(end) / throughPath(arrival));
    if (through.some((ratio) => ratio !== 1)) paths.push(spreadOfRatios(...through));
    const changes = ends.map((end) => changeFrom(arrival, end)) as [BeamChange, BeamChange];
    if (changes.some(({ m2 }) => m2 !== 1)) qualities.push(changes);
    else sizes.push((changes[0].size - changes[1].size) / 2);
  }
  const power = intervalOf(laser.power, 0.9);
  return {
    arrival,
    power: spreadOfRatios(power.low / laser.power.value, power.high / laser.power.value),
    path: together(paths),
    size: Math.hypot(...sizes),
    qualities,
  };
}

const throughPath = ({ parts }: Arrival): number =>
  parts.reduce((all, { transmission }) => all * transmission, 1);

/** A lens makes a spot of M²λf/(πw) of a beam of radius w that is nearly collimated. */
function changeFrom(stated: Arrival, changed: Arrival): BeamChange {
  const m2 = mixedQuality(changed) / mixedQuality(stated);
  const wavelength = changed.wavelength / stated.wavelength;
  return { size: Math.log((m2 * wavelength * meanRadius(stated)) / meanRadius(changed)), m2 };
}

const mixedQuality = ({ beam }: Arrival): number => Math.sqrt(beam.x.quality * beam.y.quality);

function meanRadius({ beam }: Arrival): number {
  const { radiusX, radiusY } = radiiOf(beam);
  return Math.sqrt(radiusX * radiusY);
}
