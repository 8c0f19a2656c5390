import { normalFrom } from '@coreward/optics';
import type { WalkGeometry } from '../walk/known.ts';
import { axisCoupling } from './axis-coupling.ts';
import {
  type AxisScrews,
  axisCurvature,
  curvatureOf,
  type HiddenBench,
  type OfScrews,
  type PeakShape,
} from './hidden-bench.ts';
import { lightAt, whereLightIs } from './peak-shape.ts';

/** How wrong the rest is, and how the bench was left: standard deviations unless said otherwise (our own law, no source). */
export interface HiddenLaw {
  /** ln of the beam's radius at the lens over the one that fits the mode, and of each axis besides. */
  readonly mismatch: number;
  readonly ellipticity: number;
  /** Defocus in Rayleigh ranges of the mode. */
  readonly defocus: number;
  /** Radius ratio of the two axes and distance of their foci in Rayleigh ranges, exactly; 1 and 0: none but the above. */
  readonly astigmatism: { readonly ratio: number; readonly apart: number };
  readonly quality: number;
  readonly foot: { readonly share: number; readonly times: number } | null;
  /** Error of an offset read on a card, an axis, m. */
  readonly offsetError: number;
}

/** The usual bench, its two spots laid over each other by eye. */
export const usualHiddenLaw: HiddenLaw = {
  mismatch: 0.15,
  ellipticity: 0.06,
  defocus: 0.5,
  astigmatism: { ratio: 1, apart: 0 },
  quality: 1,
  foot: null,
  offsetError: 0.3e-3,
};

/** Offset error of spots read in one picture by a camera, m. */
export const cameraOffsetError = 0.05e-3;

/** How the screws of one axis move the beam at the front focal plane. */
export function axisScrews(geometry: WalkGeometry, axis: 'horizontal' | 'vertical'): AxisScrews {
  const { tiltPerTurn: k, verticalGain, farMirror, nearMirror } = geometry;
  const angle: readonly [number, number] =
    axis === 'horizontal' ? [2 * k[0], 2 * k[1]] : [verticalGain[0] * k[2], verticalGain[1] * k[3]];
  return { angle, distance: [farMirror, nearMirror] };
}

/**
 * Draws what cannot be seen on a bench of this geometry. Light that would be too weak to be found is found by a search:
 * then three to ten times the floor is left.
 *
 * @param peakReading of the meter, in its own unit
 * @param many where the fibre has many modes: how its light falls instead
 */
export function drawHidden(
  geometry: WalkGeometry,
  law: HiddenLaw,
  peakReading: number,
  random: () => number,
  many: Pick<HiddenBench, 'shape' | 'curvature'> | null = null,
): HiddenBench {
  const normal = () => normalFrom(random);
  const between = (low: number, high: number) => low + (high - low) * random();
  const { wavelength, modeRadius, focalLength, farMirror } = geometry;
  const rayleighRange = (Math.PI * modeRadius ** 2) / wavelength;
  const matched = (wavelength * focalLength) / (Math.PI * modeRadius);
  const common = law.mismatch * normal();
  const defocus = law.defocus * normal() * rayleighRange;
  const { ratio, apart } = law.astigmatism;
  const axisOf = (axis: 'horizontal' | 'vertical', side: 1 | -1) => {
    const own = side === 1 ? ratio : 1 / ratio;
    const beam = {
      wavelength,
      modeRadius,
      focalLength,
      quality: law.quality,
      radiusAtLens: matched * Math.exp(common + law.ellipticity * normal()) * own,
      defocus: defocus + (side * apart * rayleighRange) / 2,
    };
    return axisCurvature(axisCoupling(beam), axisScrews(geometry, axis), beam);
  };
  const oneMode = curvatureOf(axisOf('horizontal', 1), axisOf('vertical', -1));
  const curvature = many?.curvature ?? oneMode;
  const usedShape: PeakShape =
    many?.shape ?? (law.foot === null ? { kind: 'peak' } : { kind: 'peak-on-foot', ...law.foot });
  const floor = 10 ** -between(3.5, 5);
  const farCard = farMirror + between(0.1, 0.3);
  const left = (['horizontal', 'vertical'] as const).map((axis) => {
    const atLens = law.offsetError * normal();
    const atCard = law.offsetError * normal();
    return { axis, offset: atLens, angle: (atLens - atCard) / farCard };
  });
  const turnsFor: Shrunk = (shrinkAngle, shrinkOffset) => {
    const [h, v] = left.map(({ axis, offset, angle }) =>
      turnsThatLeave(axisScrews(geometry, axis), offset * shrinkOffset, angle * shrinkAngle),
    );
    return [h![0], h![1], v![0], v![1]];
  };
  const start = foundInTheDark(turnsFor, curvature, usedShape, floor, between);
  return {
    curvature,
    shape: usedShape,
    start,
    noise: between(0.01, 0.03),
    floor,
    drift: between(0.0005, 0.0025),
    lash: [between(0.02, 0.05), between(0.02, 0.05), between(0.02, 0.05), between(0.02, 0.05)],
    hands: {
      countFactor: 0.1,
      countAdds: between(0.01, 0.02),
      finger: between(0.001, 0.0025),
      detuneFactor: 0.1,
    },
    peakReading,
    focus: null,
    screws: { horizontal: axisScrews(geometry, 'horizontal'), vertical: axisScrews(geometry, 'vertical') },
  };
}

/** Sideways run-out of a lens thread, 1σ for a whole turn, m (our own assumption, no source). */
const threadRunOut = 10e-6;

/**
 * The same bench with a focus that can be turned, and was left this far from its best place. What its peak would be at the best
 * place is then the achievable peak. How the aim falls off is left as it was in focus.
 *
 * @param advance of the thread a turn, m
 * @param defocus m
 */
export function withFocus(
  hidden: HiddenBench,
  { wavelength, modeRadius, focalLength }: Pick<WalkGeometry, 'wavelength' | 'modeRadius' | 'focalLength'>,
  advance: number,
  defocus: number,
): HiddenBench {
  if (hidden.screws === null) return hidden;
  // a lens that goes sideways turns the fibre's axis by that over its focal length
  const [h1, h2] = turnsThatLeave(hidden.screws.horizontal, 0, 1 / focalLength);
  const [v1, v2] = turnsThatLeave(hidden.screws.vertical, 0, 1 / focalLength);
  const rayleighRange = (Math.PI * modeRadius ** 2) / wavelength;
  return {
    ...hidden,
    focus: { advance, rayleighRange, defocus, runOut: threadRunOut, aim: [h1, h2, v1, v2] },
  };
}

/** Turns of M1 and M2 that leave the beam this far off, m and rad at the focal plane. */
function turnsThatLeave(
  { angle, distance }: AxisScrews,
  offset: number,
  slope: number,
): readonly [number, number] {
  // slope = a1·u1 + a2·u2, offset = z1·a1·u1 + z2·a2·u2
  const apart = distance[0] - distance[1];
  return [
    (offset - distance[1] * slope) / (apart * angle[0]),
    (distance[0] * slope - offset) / (apart * angle[1]),
  ];
}

/** Turns that leave a share of the angle and of the offset that the steer left. */
type Shrunk = (angle: number, offset: number) => OfScrews;

/** What is lost is the angle: it is taken back until the light shows. Only where that is not enough the cards are read again. */
function foundInTheDark(
  turnsFor: Shrunk,
  curvature: HiddenBench['curvature'],
  shape: PeakShape,
  floor: number,
  between: (low: number, high: number) => number,
): OfScrews {
  const qOf = (turns: OfScrews) =>
    curvature.reduce(
      (sum, row, i) => sum + row.reduce((part, h, j) => part + h * turns[i]! * turns[j]!, 0),
      0,
    );
  const all = turnsFor(1, 1);
  if (lightAt(shape, qOf(all)) >= 3 * floor) return all;
  const wanted = whereLightIs(shape, between(3, 10) * floor);
  const isAngle = qOf(turnsFor(0, 1)) < wanted;
  const shrunk = (share: number) => (isAngle ? turnsFor(share, 1) : turnsFor(share, share));
  let [near, far] = [0, 1];
  for (let i = 0; i < 50; i++) {
    const middle = (near + far) / 2;
    if (qOf(shrunk(middle)) < wanted) near = middle;
    else far = middle;
  }
  return shrunk(near);
}
