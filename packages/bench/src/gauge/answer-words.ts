import { capital } from '../units/capital.ts';
import type { Dimension } from '../units/dimension.ts';
import { writeInterval, writeQuantity, writeValue } from '../units/write.ts';
import type { GaugeAnswer, GaugeVerdict } from './answer.ts';

/** One answer as people read it. */
export interface AnswerWords {
  /** `1/e² radius`, with the place along the beam where there are several. */
  readonly name: string;
  readonly verdict: GaugeVerdict;
  /** `0.70 mm ± 0.01 mm`; null where undetermined, and so is the next. */
  readonly value: string | null;
  /** `0.68 to 0.72 mm` */
  readonly interval: string | null;
  /** What its doubt comes from, most first: `scatter of the readings, 81 %`. */
  readonly from: readonly string[];
  /** Why it is weak or undetermined, and what to add; null where it is neither. */
  readonly advice: string | null;
}

export function answerWords(answer: GaugeAnswer): AnswerWords {
  const { quantity, value, uncertainty, low, high, verdict, contributions, because, add, at } = answer;
  const { name: plain, dimension } = told(quantity);
  const name = at === undefined ? plain : `${plain} at ${writeValue(at, 'length')}`;
  const advice = because === null ? null : `${sentence(because)} ${add ?? ''}`.trim();
  if (value === null || uncertainty === null || low === null || high === null)
    return { name, verdict, value: null, interval: null, from: [], advice };
  return {
    name,
    verdict,
    value: writeQuantity({ value, uncertainty, shape: 'normal', origin: 'measured' }, dimension),
    interval: writeInterval(low, high, dimension, digitsFor(low, high)),
    from: contributions
      .filter(({ share }, i) => i === 0 || share >= worthTelling)
      .map(({ from, share }) => `${from}, ${writeValue(share, 'fraction', 2)}`),
    advice,
  };
}

/** So many that the two ends differ in two of them; never fewer than three. */
function digitsFor(low: number, high: number): number {
  const most = Math.max(Math.abs(low), Math.abs(high));
  return high > low ? Math.min(9, Math.max(3, Math.ceil(Math.log10(most / (high - low))) + 1)) : 3;
}

/** A cause of less than this share of the variance is not told. */
const worthTelling = 0.05;

const names: Readonly<Record<string, string>> = {
  radius1e2: '1/e² radius',
  d4sigma: 'second-moment diameter (4σ)',
  d4sigmaMajor: 'second-moment diameter, long axis',
  d4sigmaMinor: 'second-moment diameter, short axis',
  ellipticity: 'ellipticity, short over long',
  azimuthMajor_imageDown: 'azimuth of the long axis, clockwise as seen',
  centroidX: 'centre from the left, pixels',
  centroidY: 'centre from the top, pixels',
  centre: 'centre',
  waistDiameter: 'waist diameter',
  waistPosition: 'waist position',
  fullDivergence: 'full divergence',
  rayleighLength: 'Rayleigh length',
  m2: 'M²',
  virtualSource: 'where the beam seems to come from',
  length: 'length',
  mirror: 'tilt of the mirror',
  beam: 'turn of the beam',
  slack: 'slack of the screw',
  lever: 'lever from the pivot to the screw',
  horizontalOffset_right: 'horizontal offset, right positive',
  verticalOffset_up: 'vertical offset, up positive',
  offset: 'distance of the two spots',
  transmission: 'transmission',
  focalLength: 'focal length',
  pitch: 'pitch',
  na5percent: 'numerical aperture at 5 %',
  na1e2: 'numerical aperture at 1/e²',
  endFaceAtReadingZ: 'where the end stands on the ruler',
  sin1e2: 'sine of the half angle at 1/e²',
  sin5percent: 'numerical aperture at 5 %',
  sinHalf: 'sine of the half angle at half',
  equivalentMfdFrom1e2: 'mode field diameter from the 1/e² angle',
  coreDiameter: 'core diameter',
  attenuation: 'attenuation',
  loss: 'loss',
  claddingShare: 'share in the cladding',
  power: 'power',
  responsivity: 'responsivity',
  wattsPerVolt: 'watts a volt',
  timeConstant: 'time constant',
  exponent: 'exponent of the code against light',
};

/** `radius1e2_m` as a name for people and what it measures. */
function told(quantity: string): { readonly name: string; readonly dimension: Dimension } {
  const [ending, dimension] = endings.find(([one]) => quantity.endsWith(one)) ?? ['', 'number' as const];
  const plain = quantity.slice(0, quantity.length - ending.length);
  return { name: names[plain] ?? plain, dimension };
}

const endings: readonly (readonly [string, Dimension])[] = [
  ['_rad_per_turn', 'anglePerTurn'],
  ['_A_per_W', 'responsivity'],
  ['_m_per_turn', 'screwPitch'],
  ['_per_m', 'attenuation'],
  ['_m', 'length'],
  ['_rad', 'angle'],
  ['_W', 'power'],
  ['_A', 'current'],
  ['_s', 'time'],
  ['_turns', 'turns'],
  ['_nepers', 'loss'],
  ['_px', 'number'],
];

const sentence = (text: string): string => `${capital(text)}.`;
