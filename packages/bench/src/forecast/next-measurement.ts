import type { Entry } from '../quantity/quantity.ts';
import type { Measurement } from './expected.ts';
import type { Spread } from './spread.ts';

/** A gauge that measures an entry, how well, and how it goes. */
interface GaugeFor {
  readonly matches: RegExp;
  readonly gauge: string;
  readonly how: string;
  /** Standard uncertainty to be had at home: a fraction of the value, or in the entry's own unit (common practice, no source). */
  readonly relative?: number;
  readonly absolute?: number;
}

const gauges: readonly GaugeFor[] = [
  {
    matches: /^laser\.beam.*diameter$/,
    gauge: 'knife-edge',
    how: 'move a razor blade through the beam and note the power',
    relative: 0.03,
  },
  {
    matches: /^laser\.beam.*divergence$/,
    gauge: 'two-distances',
    how: 'measure the spot at two distances with a ruler',
    relative: 0.05,
  },
  {
    matches: /^laser\.beam.*quality$/,
    gauge: 'caustic',
    how: 'measure the beam at ten places about a focus',
    relative: 0.05,
  },
  {
    matches: /^laser\.beam.*waist position$/,
    gauge: 'caustic',
    how: 'measure the beam at ten places about its waist',
    absolute: 0.05,
  },
  {
    matches: /^laser\.power$/,
    gauge: 'photodiode',
    how: 'photodiode, load resistor and multimeter',
    relative: 0.05,
  },
  {
    matches: /^(collimator|output\.collimator)\.focal length$/,
    gauge: 'far-wall-spot',
    how: 'light sent backwards: measure its spot at the far wall',
    relative: 0.015,
  },
  {
    matches: /^collimator\.focus\./,
    gauge: 'two-colour-focus',
    how: 'find where light sent backwards leaves the lens collimated',
    relative: 0.002,
  },
  {
    matches: /^collimator\.clear aperture$/,
    gauge: 'ruler',
    how: 'measure the free opening',
    absolute: 0.0001,
  },
  {
    matches: /^fibre\.numerical aperture$/,
    gauge: 'far-field-cone',
    how: 'measure the cone of light that leaves the fibre, with a ruler',
    relative: 0.04,
  },
  {
    matches: /^fibre\.core diameter$/,
    gauge: 'core-picture',
    how: 'photograph the lit end through a magnifier',
    relative: 0.03,
  },
  {
    matches: /^fibre\.attenuation$/,
    gauge: 'cut-back',
    how: 'compare two lengths of the fibre',
    relative: 0.05,
  },
  {
    matches: /^fibre\.connectors\.between/,
    gauge: 'substitution',
    how: 'read the power with and without the joint',
    absolute: 0.0115,
  },
  {
    matches: /^fibre\.bends.*radius$/,
    gauge: 'ruler',
    how: 'measure the radius of the bend',
    absolute: 0.0005,
  },
  { matches: /^fibre\.length$/, gauge: 'ruler', how: 'measure the fibre', relative: 0.01 },
  { matches: /^path.*space$/, gauge: 'ruler', how: 'measure the distance', absolute: 0.001 },
  {
    matches: /^path.*(reflectance|transmission)$/,
    gauge: 'before-and-after',
    how: 'read the power before and behind the part',
    relative: 0.01,
  },
  {
    matches: /^path.*(lever|pitch)$/,
    gauge: 'screw-turns',
    how: 'count turns while the spot moves on a far wall',
    relative: 0.03,
  },
  {
    matches: /surfaces/,
    gauge: 'before-and-after',
    how: 'read the power before and behind the lens',
    relative: 0.005,
  },
];

/** Every gauge that a measurement can be advised with, by its name in the table of gauges. */
export const advisedGauges: ReadonlySet<string> = new Set(gauges.map(({ gauge }) => gauge));

/**
 * The unknowns ranked by how much knowing each would narrow the output power's interval, assuming that the gauge finds
 * the value as stated. The draws are not drawn again: each keeps its weight where the measured value is likely.
 *
 * @source importance weights, JCGM 101:2008 propagates the same draws; the accuracies of the gauges are common practice
 */
export function measurementsWorthTaking(spread: Spread, most = 5): readonly Measurement[] {
  const powers = spread.draws.map(({ power, budget }) => power * budget.output);
  const order = powers.map((_, i) => i).sort((a, b) => powers[a]! - powers[b]!);
  const width = (weights: Float64Array) => weightedWidth(powers, order, weights);
  const before = width(new Float64Array(powers.length).fill(1));
  if (!(before > 0)) return [];
  const ranks = ranksOf(powers);
  const measurements = spread.entries.flatMap((entry): Measurement[] => {
    const gauge = gauges.find(({ matches }) => matches.test(entry.key));
    if (gauge === undefined) return [];
    const reached = gauge.absolute ?? Math.abs(entry.value) * (gauge.relative ?? 0);
    if (reached > 0.7 * entry.uncertainty) return [];
    const drawn = spread.draws.map(({ draw }) => draw.at(entry));
    if (!isFollowed(ranks, drawn)) return [];
    const left = Math.max(reached, 0.2 * entry.uncertainty);
    const weights = Float64Array.from(drawn, (x) => shareKept(entry, x, left));
    const narrows = Math.min(1, width(weights) / before);
    return narrows < 0.985 ? [{ quantity: entry.key, gauge: gauge.gauge, how: gauge.how, narrows }] : [];
  });
  return measurements.sort((a, b) => a.narrows - b.narrows).slice(0, most);
}

/** What one irrelevant entry in a hundred reaches by chance: the 99 % point of χ² with two degrees of freedom (tables, from memory). */
const byChance = 9.21;

/**
 * Whether the power follows an entry, rising, falling or bent, more than chance would have it. The width of weighted draws
 * wavers by a tenth, which alone would advise to measure what has no bearing.
 *
 * @param ranks of the powers, from −1 to 1
 * @source C. Spearman, Am. J. Psychol. 15, 72 (1904), from memory: the correlation of ranks; here also with the second Legendre
 *   polynomial, orthogonal to the first. Of n independent pairs each, squared and times n, is χ² with one degree of freedom
 */
function isFollowed(ranks: Float64Array, values: readonly number[]): boolean {
  const own = ranksOf(values);
  let straight = 0;
  let bent = 0;
  own.forEach((x, i) => {
    straight += x * ranks[i]!;
    bent += ((3 * x * x - 1) / 2) * ranks[i]!;
  });
  // over an even spread from −1 to 1 the mean squares of x and of the second polynomial are 1/3 and 1/5
  const n = own.length;
  const [rising, curved] = [(3 * straight) / n, (Math.sqrt(15) * bent) / n];
  return n * (rising ** 2 + curved ** 2) > byChance;
}

/** Ranks, spread evenly from −1 to 1. */
function ranksOf(values: readonly number[]): Float64Array {
  const ranks = new Float64Array(values.length);
  const order = values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);
  order.forEach((i, rank) => {
    ranks[i] = (2 * rank + 1) / values.length - 1;
  });
  return ranks;
}

/** Density of what the gauge leaves over the density of what was thought before, up to a constant. */
function shareKept(entry: Entry, x: number, reached: number): number {
  const now = ((x - entry.value) / reached) ** 2 / 2;
  switch (entry.shape) {
    case 'normal':
      return Math.exp(((x - entry.value) / entry.uncertainty) ** 2 / 2 - now);
    case 'rectangular':
      return Math.exp(-now);
    case 'positive': {
      const spread = entry.uncertainty / entry.value;
      return x * Math.exp((Math.log(x / entry.value) / spread) ** 2 / 2 - now);
    }
  }
}

/**
 * Width from the 5 % to the 95 % point of weighted values.
 *
 * @param order their indices, by rising value
 */
function weightedWidth(values: readonly number[], order: readonly number[], weights: Float64Array): number {
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const point = (share: number): number => {
    let below = 0;
    let last = values[order[0]!]!;
    let lastShare = 0;
    for (const i of order) {
      const middle = (below + weights[i]! / 2) / total;
      if (middle >= share) {
        const part = middle === lastShare ? 1 : (share - lastShare) / (middle - lastShare);
        return last + part * (values[i]! - last);
      }
      below += weights[i]!;
      last = values[i]!;
      lastShare = middle;
    }
    return last;
  };
  return point(0.95) - point(0.05);
}
