import type { Exposure } from './exposure.ts';
import { type ExposureLimit, exposureLimit, type IrradianceLimit } from './exposure-limit.ts';
import { type LimitSet, limitSets } from './limit-set.ts';

/** The limits of both sets, and the one that decides. */
export interface BothLimits<Limit extends IrradianceLimit> {
  readonly sets: Readonly<Record<LimitSet, Limit>>;
  /** The lower one; where they are equal that of the smaller averaging stop, then the newer one. */
  readonly governing: Limit;
  /** Whether both say the same. */
  readonly isTie: boolean;
}

/**
 * The limits of both sets for one exposure, and which governs: the lower. The newer set is 2.5 times stricter for
 * nanosecond pulses, the older one up to 25 times from 1200 to 1400 nm.
 *
 * @throws {OutOfRange} outside what the tables cover
 * @source DGUV Information 203-042, section 7 (read), warns that the newer standard's class 1 can exceed the limits that
 *   are law in the European Union; taking the lower is our proposal
 */
export function governingLimit(exposure: Exposure): BothLimits<ExposureLimit> {
  return lowerOf((set) => exposureLimit(set, exposure));
}

/** Two limits that differ by rounding alone are equal. */
const rounding = 1e-12;

/** Computes a limit in both sets and picks the one that decides. */
export function lowerOf<Limit extends IrradianceLimit>(limitIn: (set: LimitSet) => Limit): BothLimits<Limit> {
  const sets: Record<LimitSet, Limit> = { eu2006: limitIn('eu2006'), icnirp2013: limitIn('icnirp2013') };
  const { eu2006, icnirp2013 } = sets;
  const difference = eu2006.irradiance / icnirp2013.irradiance - 1;
  const isTie = Math.abs(difference) < rounding;
  const olderGoverns = isTie ? eu2006.averagingDiameter < icnirp2013.averagingDiameter : difference < 0;
  return { sets, governing: olderGoverns ? eu2006 : icnirp2013, isTie };
}

/** Both limits as a list, in the order of `limitSets`. */
export function listed<Limit extends IrradianceLimit>({ sets }: BothLimits<Limit>): readonly Limit[] {
  return limitSets.map((set) => sets[set]);
}
