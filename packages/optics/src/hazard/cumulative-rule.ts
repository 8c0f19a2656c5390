/** How many pulses together heat the retina more than each alone: the third rule for pulse trains. */
import { nanometres } from './closed-range.ts';
import { largestCountedAngle } from './correction-factors.ts';
import type { Basis } from './evidence.ts';
import { countedAngle, type Exposure, type PulseTrain } from './exposure.ts';
import { type ExposureLimit, limitsByHarm } from './exposure-limit.ts';
import { directiveTable, type LimitSet } from './limit-set.ts';
import { confluenceTimes } from './retina-rows.ts';

/** The limit of one pulse by the cumulative rule. */
export interface CumulativeLimit {
  /** J/m² for each pulse. */
  readonly perPulse: number;
  readonly basis: Basis;
  /** The limit it was reduced from. */
  readonly single: ExposureLimit;
}

const correctionC5: Basis = {
  evidence: 'from memory',
  source: 'ICNIRP, Health Phys. 105, 271 (2013), and IEC 60825-1:2014: correction C5 for repeated pulses',
};

/**
 * The lowest limit of each pulse by the cumulative rule; `null` where the retina is not what is hit, for the rule knows
 * only heat on the retina.
 *
 * Pulses closer together than T_min or T_i count as one: their sum is held to the limit of that time.
 *
 * @source `eu2006`: Directive 2006/25/EC, Annex II, table 2.6, read; `icnirp2013`: from memory
 */
export function cumulativeLimit(set: LimitSet, train: PulseTrain): CumulativeLimit | null {
  const { pulseDuration, repetitionRate, exposureTime } = train;
  const pulses = countPulses(train);
  const limits = confluenceTimesAt(set, train.wavelength).flatMap((confluence) => {
    const window = Math.min(confluence, exposureTime);
    const grouped = repetitionRate * window > 1 && pulseDuration < window;
    const duration = grouped ? window : pulseDuration;
    // a window may hold one pulse more than it is periods long
    const together = grouped ? Math.ceil(repetitionRate * window) : 1;
    const single = heatOf(set, { ...train, exposureTime: duration });
    if (single === undefined) return [];
    const events: Events = { count: Math.max(1, pulses / together), duration, exposureTime, confluence };
    const share = reduction(set, events, train.sourceAngle);
    return [{ perPulse: (single.radiantExposure / together) * share.value, basis: share.basis, single }];
  });
  const [first, ...others] = limits;
  return others.reduce<CumulativeLimit | null>(
    (least, one) => (least === null || one.perPulse < least.perPulse ? one : least),
    first ?? null,
  );
}

/** N = f·T, at least one. */
export function countPulses({ repetitionRate, exposureTime }: PulseTrain): number {
  return Math.max(1, repetitionRate * exposureTime);
}

function confluenceTimesAt(set: LimitSet, wavelength: number): readonly number[] {
  const nm = nanometres(wavelength);
  return nm >= 400 && nm <= 1400 ? confluenceTimes(set, nm) : [];
}

function heatOf(set: LimitSet, exposure: Exposure): ExposureLimit | undefined {
  return limitsByHarm(set, exposure).find(({ harm }) => harm === 'heat on the retina');
}

/** Pulses, or groups that count as one. */
interface Events {
  readonly count: number;
  /** Of each, s. */
  readonly duration: number;
  readonly exposureTime: number;
  /** T_min or T_i, s. */
  readonly confluence: number;
}

function reduction(
  set: LimitSet,
  events: Events,
  sourceAngle: number | null,
): { readonly value: number; readonly basis: Basis } {
  switch (set) {
    case 'eu2006':
      return { value: events.count ** -0.25, basis: directiveTable('2.6') };
    case 'icnirp2013':
      return { value: modernReduction(events, countedAngle(sourceAngle)), basis: correctionC5 };
  }
}

function modernReduction({ count, duration, exposureTime, confluence }: Events, angle: number): number {
  if (duration <= confluence) {
    if (exposureTime <= 0.25 || count <= 600) return 1;
    return Math.min(1, Math.max(0.4, 5 * count ** -0.25));
  }
  if (angle <= 5e-3 || angle > 100e-3) return 1;
  const floor = angle <= largestCountedAngle('icnirp2013', duration).value ? 0.4 : 0.2;
  return Math.max(floor, count ** -0.25);
}
