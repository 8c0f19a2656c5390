import { normalFrom, seededUniform } from '@coreward/optics';
import { statedBench } from '../forecast/stated-bench.ts';
import type { Launch } from '../launch/launch.ts';
import { type WalkedLaunch, type WalkGeometry, walkedLaunch } from '../walk/known.ts';
import { axisScrews, cameraOffsetError, drawHidden, usualHiddenLaw, withFocus } from './draw-hidden.ts';
import { type AxisScrews, curvatureOf, type HiddenBench, type PeakShape } from './hidden-bench.ts';
import { type PracticeBench, practiceBench } from './practice-bench.ts';

/** How the bench was left before the practice begins. */
export type PracticeStart =
  /** Laid out by ruler: beams miss each other by millimetres, and nothing arrives. */
  | 'unsteered'
  /** Both spots laid over each other on two cards, by eye or by a camera. */
  | 'steered-by-eye'
  | 'steered-by-camera';

/** How far beams miss each other on a bench that was laid out by ruler, an axis, m (our own assumption, no source). */
const laidOutError = 2.5e-3;

/** How far a focus that can be turned was left from its best place, Rayleigh ranges, 1σ (our own assumption, no source). */
const threadDefocus = 1;

const offsetErrors: Readonly<Record<PracticeStart, number>> = {
  unsteered: laidOutError,
  'steered-by-eye': usualHiddenLaw.offsetError,
  'steered-by-camera': cameraOffsetError,
};

/**
 * A simulated bench built like a launch, its screws left somewhere, its beam, focus and hands a little different from what
 * is stated. The same launch, seed and acts give the same readings.
 *
 * @param seed a whole number from 0 to 2³² − 1
 * @throws {Refusal} if the launch has no lens, or fewer than two mirrors with screws
 */
export function practiceBenchOf(launch: Launch, seed: number, start: PracticeStart): PracticeBench {
  const random = seededUniform(seed);
  return practiceBench(hiddenBenchOf(launch, random, start), random);
}

/** What such a bench hides. @param random uniform in [0, 1) */
export function hiddenBenchOf(launch: Launch, random: () => number, start: PracticeStart): HiddenBench {
  const walked = walkedLaunch(launch);
  const law = { ...usualHiddenLaw, offsetError: offsetErrors[start] };
  const { output } = statedBench(launch).budget;
  // what nobody knew beforehand: some light more or less than forecast
  const peakReading = launch.laser.power.value * output * Math.exp(0.1 * normalFrom(random));
  const { manyModes, geometry } = walked;
  const many =
    manyModes === null ? null : { shape: flank(walked), curvature: plateauCurvature(geometry, manyModes) };
  const glued = drawHidden(geometry, law, peakReading, random, many);
  const thread = launch.collimator?.focusThread?.value ?? null;
  const rayleighRange = (Math.PI * geometry.modeRadius ** 2) / geometry.wavelength;
  const hidden =
    thread === null || manyModes !== null
      ? glued
      : withFocus(glued, geometry, thread, threadDefocus * rayleighRange * normalFrom(random));
  if (start !== 'unsteered') return hidden;
  // nobody has searched for the light yet
  return { ...hidden, start: leftByRuler(geometry, random) };
}

/** Of many modes light stays inside while its spot and cone do: the spot's size against the core's softens the edge. */
function flank({ geometry, manyModes, meeting }: WalkedLaunch): PeakShape {
  const spot = (meeting.beam.waistRadiusX + meeting.beam.waistRadiusY) / 4;
  return {
    kind: 'plateau',
    softness: Math.min(0.4, Math.max(0.04, spot / (manyModes?.coreRadius ?? geometry.modeRadius))),
  };
}

/** q = 1 where spot or direction reaches the edge of what a core of many modes takes. */
export function plateauCurvature(
  geometry: WalkGeometry,
  { coreRadius, numericalAperture }: NonNullable<WalkedLaunch['manyModes']>,
): HiddenBench['curvature'] {
  const f = geometry.focalLength;
  const axis = ({ angle, distance }: AxisScrews): readonly [number, number, number] => {
    const e = ([0, 1] as const).map((j) => ({
      place: (f * angle[j]) / coreRadius,
      direction: (distance[j] * angle[j]) / f / numericalAperture,
    }));
    const product = (i: 0 | 1, j: 0 | 1) => e[i]!.place * e[j]!.place + e[i]!.direction * e[j]!.direction;
    return [product(0, 0), product(0, 1), product(1, 1)];
  };
  return curvatureOf(axis(axisScrews(geometry, 'horizontal')), axis(axisScrews(geometry, 'vertical')));
}

/** Screws of a bench that was laid out by ruler: each mirror sends the beam past the next part by millimetres. */
function leftByRuler(geometry: WalkGeometry, random: () => number): HiddenBench['start'] {
  const horizontal = axisScrews(geometry, 'horizontal');
  const vertical = axisScrews(geometry, 'vertical');
  const apart = geometry.farMirror - geometry.nearMirror;
  const miss = (angle: number, distance: number) => (laidOutError * normalFrom(random)) / (distance * angle);
  const toTheLens = geometry.nearMirror;
  return [
    miss(horizontal.angle[0], apart),
    miss(horizontal.angle[1], toTheLens),
    miss(vertical.angle[0], apart),
    miss(vertical.angle[1], toTheLens),
  ];
}
