import { studentQuantile } from '@coreward/optics';

/**
 * Whether the readings can say it. `weak`: they do, but less surely than the interval tells, and `add` says what would
 * help. `undetermined`: they cannot, and there is no figure.
 */
export type GaugeVerdict = 'determined' | 'weak' | 'undetermined';

/** One reason for the uncertainty of an answer. */
export interface Contribution {
  readonly from: string;
  /** Standard uncertainty it alone would leave, in the unit of the value. */
  readonly uncertainty: number;
  /** Its share of the variance, 0 to 1. */
  readonly share: number;
}

/** What a gauge says about one quantity; the name ends in the SI unit, `_m`, `_rad`, or has none. */
export interface GaugeAnswer {
  readonly quantity: string;
  /** null where undetermined, and so are the next three. */
  readonly value: number | null;
  /** Standard uncertainty. */
  readonly uncertainty: number | null;
  /** Ends of the 90 % interval. */
  readonly low: number | null;
  readonly high: number | null;
  readonly verdict: GaugeVerdict;
  /** Why it is weak or undetermined. */
  readonly because: string | null;
  /** What to measure in addition. */
  readonly add: string | null;
  readonly contributions: readonly Contribution[];
  /** Where along the beam, m, for a gauge that reads several places; left out elsewhere. */
  readonly at?: number;
}

/** One cause of doubt: a standard uncertainty in the unit of the answer, and how many readings it was learnt from. */
export interface Doubt {
  readonly from: string;
  readonly uncertainty: number;
  /** Degrees of freedom; left out: ∞, for what is stated and not estimated. */
  readonly freedom?: number;
}

export interface Found {
  readonly quantity: string;
  readonly value: number;
  readonly doubts: readonly Doubt[];
  /** `positive`: cannot be zero or less; its interval reaches by a factor to either side. */
  readonly shape?: 'normal' | 'positive';
  /** The smallest value there can be; value and interval do not go below. */
  readonly floor?: number;
  /** Given: the answer is weak. */
  readonly weak?: { readonly because: string; readonly add: string } | undefined;
}

/**
 * An answer from a value and the causes of its doubt: standard uncertainties in quadrature, the 90 % interval by
 * Student's law with the effective degrees of freedom.
 *
 * @source JCGM 100:2008 (GUM), 5.1.2 and G.4.1, the Welch-Satterthwaite formula (from memory)
 */
export function determined(found: Found): GaugeAnswer {
  const { quantity, doubts, shape = 'normal', floor = Number.NEGATIVE_INFINITY, weak } = found;
  const uncertainty = Math.hypot(...doubts.map((doubt) => doubt.uncertainty));
  const reach = studentQuantile(0.95, effectiveFreedom(doubts, uncertainty)) * uncertainty;
  const byFactor = shape === 'positive' && found.value > 0;
  const factor = byFactor ? Math.exp(Math.min(reach / found.value, 50)) : 1;
  const low = byFactor ? found.value / factor : found.value - reach;
  const high = byFactor ? found.value * factor : found.value + reach;
  return {
    quantity,
    value: Math.max(found.value, floor),
    uncertainty,
    low: Math.max(low, floor),
    high: Math.max(high, floor),
    verdict: weak === undefined ? 'determined' : 'weak',
    because: weak?.because ?? null,
    add: weak?.add ?? null,
    contributions: contributionsOf(doubts, uncertainty),
  };
}

/** No figure: the readings cannot say. */
export function undetermined(quantity: string, because: string, add: string): GaugeAnswer {
  const none = { value: null, uncertainty: null, low: null, high: null };
  return { quantity, ...none, verdict: 'undetermined', because, add, contributions: [] };
}

function effectiveFreedom(doubts: readonly Doubt[], uncertainty: number): number {
  const sum = doubts.reduce(
    (total, doubt) => total + doubt.uncertainty ** 4 / (doubt.freedom ?? Number.POSITIVE_INFINITY),
    0,
  );
  return sum > 0 ? Math.max(1, uncertainty ** 4 / sum) : Number.POSITIVE_INFINITY;
}

/** Largest first; what is no cause at all is left out. */
function contributionsOf(doubts: readonly Doubt[], total: number): readonly Contribution[] {
  return doubts
    .filter(({ uncertainty }) => uncertainty > 0)
    .map(({ from, uncertainty }) => ({ from, uncertainty, share: (uncertainty / total) ** 2 }))
    .sort((a, b) => b.share - a.share);
}
