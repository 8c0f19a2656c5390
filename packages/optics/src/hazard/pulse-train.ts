/** What each pulse of a regular train may amount to: the lowest of three rules. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { countPulses, cumulativeLimit } from './cumulative-rule.ts';
import { joinBases } from './evidence.ts';
import type { PulseTrain } from './exposure.ts';
import { type ExposureLimit, type IrradianceLimit, limitsByHarm } from './exposure-limit.ts';
import { type BothLimits, lowerOf } from './governing-limit.ts';
import type { LimitSet } from './limit-set.ts';

/**
 * - `single pulse`: each pulse by itself
 * - `average`: all of them as one long exposure
 * - `cumulative`: many pulses on one spot of the retina
 */
export type TrainRule = 'single pulse' | 'average' | 'cumulative';

/** The limit of each pulse of a train. Its `irradiance` is what that makes on average. */
export interface TrainLimit extends IrradianceLimit {
  readonly pulseDuration: number;
  readonly repetitionRate: number;
  /** N, in the exposure time. */
  readonly pulses: number;
  /** J/m² for each pulse. */
  readonly radiantExposurePerPulse: number;
  /** The rule that gave it. */
  readonly rule: TrainRule;
}

interface Candidate {
  readonly rule: TrainRule;
  readonly perPulse: number;
  readonly limit: ExposureLimit;
  readonly basis: ExposureLimit['basis'];
}

/**
 * The limit of each pulse in one set: the lowest of the limit of the single pulse, that of the whole exposure shared by
 * all pulses, and, for heat on the retina alone, the cumulative rule. Modulated light is a train, too.
 *
 * @throws {OutOfRange} outside what the tables cover, if a rate or duration is not above zero, pulses overlap, or the
 *   exposure is shorter than a pulse
 * @source `eu2006`: Directive 2006/25/EC, Annex II, table 2.6, read; `icnirp2013`: ICNIRP, Health Phys. 105, 271 (2013),
 *   from memory
 */
export function trainLimit(set: LimitSet, train: PulseTrain): TrainLimit {
  mustBeTrain(train);
  const pulses = countPulses(train);
  const ofPulse = limitsByHarm(set, { ...train, exposureTime: train.pulseDuration });
  const ofTrain = limitsByHarm(set, train);
  const cumulative = cumulativeLimit(set, train);
  const candidates: readonly Candidate[] = [
    ...ofPulse.map((limit) => candidate('single pulse', limit.radiantExposure, limit)),
    ...ofTrain.map((limit) => candidate('average', limit.radiantExposure / pulses, limit)),
    ...(cumulative === null
      ? []
      : [
          {
            rule: 'cumulative' as const,
            perPulse: cumulative.perPulse,
            limit: cumulative.single,
            basis: joinBases([cumulative.basis], cumulative.single.basis),
          },
        ]),
  ];
  const lowest = candidates.reduce((least, one) => (one.perPulse < least.perPulse ? one : least));
  return {
    ...lowest.limit,
    exposureTime: train.exposureTime,
    // rules may come with different stops; the smallest is never milder
    averagingDiameter: Math.min(...candidates.map(({ limit }) => limit.averagingDiameter)),
    basis: lowest.basis,
    irradiance: lowest.perPulse * train.repetitionRate,
    pulseDuration: train.pulseDuration,
    repetitionRate: train.repetitionRate,
    pulses,
    radiantExposurePerPulse: lowest.perPulse,
    rule: lowest.rule,
  };
}

const candidate = (rule: TrainRule, perPulse: number, limit: ExposureLimit): Candidate => ({
  rule,
  perPulse,
  limit,
  basis: limit.basis,
});

/**
 * The limits of both sets, and the lower one. The older set's cumulative rule is often the stricter although its single
 * pulse is not.
 *
 * @throws {OutOfRange} as `trainLimit`
 * @source as `trainLimit`
 */
export function governingTrainLimit(train: PulseTrain): BothLimits<TrainLimit> {
  return lowerOf((set) => trainLimit(set, train));
}

function mustBeTrain({ pulseDuration, repetitionRate, exposureTime }: PulseTrain): void {
  mustBePositive(pulseDuration, 'pulseDuration', 'a pulse duration');
  mustBePositive(repetitionRate, 'repetitionRate', 'a repetition rate');
  if (pulseDuration * repetitionRate > 1) {
    throw new OutOfRange({
      where: 'pulseDuration',
      what: `pulses of ${pulseDuration} s at ${repetitionRate} Hz overlap`,
      mend: 'Treat the light as continuous, with governingLimit.',
    });
  }
  if (exposureTime < pulseDuration) {
    throw new OutOfRange({
      where: 'exposureTime',
      what: `${exposureTime} s is shorter than one pulse of ${pulseDuration} s`,
      mend: 'Give the time for which the whole train is assumed to hit.',
    });
  }
}
