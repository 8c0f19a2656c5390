/** Several wavelengths at once: exposures add up as shares of their limits, each kind of harm for itself. */
import { OutOfRange } from '../out-of-range.ts';
import type { Basis } from './evidence.ts';
import type { Exposure } from './exposure.ts';
import { type ExposureLimit, limitsByHarm } from './exposure-limit.ts';
import type { Harm } from './limit-row.ts';
import { type LimitSet, limitSets } from './limit-set.ts';

/** One line or mode of the light: what it is, and how much arrives. */
export interface Line extends Exposure {
  /** W/m², averaged over the stop of its limit. */
  readonly irradiance: number;
}

/** What one kind of harm adds up to. */
export interface HarmSum {
  readonly harm: Harm;
  /** Sum of exposure over limit; above 1: above the limit. */
  readonly timesLimit: number;
  /** The limits that went in, each with its set, time and wavelength. */
  readonly limits: readonly ExposureLimit[];
}

/** Several wavelengths in one place, judged together by one limit set. */
export interface CombinedExposure {
  readonly set: LimitSet;
  /** One for each kind of harm, the largest first. */
  readonly sums: readonly HarmSum[];
  readonly largest: HarmSum;
  /** Whether exposures of different length were added, for which the source asks for extreme caution. */
  readonly mixesDurations: boolean;
  readonly basis: Basis;
}

const additivity: Basis = {
  evidence: 'read',
  source: 'BGI 832, table 1: what adds up',
};

/**
 * Sums in one set. On the retina heat adds from 400 to 1400 nm and photochemistry from 400 to 600 nm, each for itself; the
 * front of the eye adds below 400 nm and beyond 1400 nm, each for itself; on the skin everything from 315 nm up adds.
 *
 * @throws {OutOfRange} if there is no line, an irradiance is negative, or a limit is outside what the tables cover
 * @source BGI 832, table 1: read
 */
export function combinedExposure(set: LimitSet, lines: readonly Line[]): CombinedExposure {
  const sums = new Map<Harm, HarmSum>();
  for (const line of lines) {
    mustBeIrradiance(line.irradiance);
    for (const limit of limitsByHarm(set, line)) {
      const known = sums.get(limit.harm);
      sums.set(limit.harm, {
        harm: limit.harm,
        timesLimit: (known?.timesLimit ?? 0) + line.irradiance / limit.irradiance,
        limits: [...(known?.limits ?? []), limit],
      });
    }
  }
  const ordered = [...sums.values()].sort((a, b) => b.timesLimit - a.timesLimit);
  const [largest] = ordered;
  if (largest === undefined) {
    throw new OutOfRange({
      where: 'lines',
      what: 'there is no light to add up',
      mend: 'Give at least one line.',
    });
  }
  const mixesDurations = new Set(lines.map(({ exposureTime }) => exposureTime)).size > 1;
  return { set, sums: ordered, largest, mixesDurations, basis: additivity };
}

/** The set in which the light comes to more of its limits. @source as `combinedExposure` */
export function worseCombinedExposure(lines: readonly Line[]): CombinedExposure {
  const [first, ...others] = limitSets.map((set) => combinedExposure(set, lines));
  return others.reduce(
    (worse, one) => (one.largest.timesLimit > worse.largest.timesLimit ? one : worse),
    first!,
  );
}

function mustBeIrradiance(irradiance: number): void {
  if (irradiance >= 0 && Number.isFinite(irradiance)) return;
  throw new OutOfRange({
    where: 'irradiance',
    what: `${irradiance} W/m² is no irradiance`,
    mend: 'Give 0 or more, in W/m², averaged over the stop.',
  });
}
