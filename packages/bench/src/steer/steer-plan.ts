import type { StepName } from '../caution/step-names.ts';
import type { Launch } from '../launch/launch.ts';
import { cameraOffsetError } from '../practice/draw-hidden.ts';
import type { PeakShape } from '../practice/hidden-bench.ts';
import { walkedLaunch } from '../walk/known.ts';
import type { SteerFacts } from './procedure.ts';
import { type ReverseLight, reverseLight } from './reverse-light.ts';
import { type Serving, servingMirror } from './serving-mirror.ts';
import { leftOver, type StartForecast, startForecast, type Tolerated } from './start-forecast.ts';
import { type Cards, type SteerLayout, steerLayout } from './steer-layout.ts';
import { ordinaryMeter, type SteerMeter } from './steer-meter.ts';

/** Everything that is known before a steer begins. */
export interface SteerPlan extends SteerFacts {
  /** What the search and the share that is seen are counted for. */
  readonly meter: SteerMeter;
  readonly reverse: ReverseLight | null;
  readonly serving: Serving;
  readonly start: StartForecast;
  /** The same with one thing changed, the most helpful first. */
  readonly better: readonly { readonly by: 'camera' | 'farther'; readonly start: StartForecast }[];
}

/** The steps whose cautions are read before reference light is sent backwards. */
export const readBeforeSteer: readonly StepName[] = ['two-mirrors', 'find-light'];

/** Finest motion of a finger on a screw, rms, turns (our assumption, no source): the middle of 0.001 to 0.0025. */
const finger = 0.00175;
/** How soft the edge of a plateau is taken to be (our assumption). */
const plateauSoftness = 0.1;

/**
 * What to expect of a steer with cards at these places.
 *
 * @throws {Refusal} if the launch has no lens or fewer than two mirrors with screws, or the cards stand where nothing can be told
 */
export function steerPlan(
  launch: Launch,
  cards: Cards,
  layout: SteerLayout = steerLayout(launch),
  meter: SteerMeter = ordinaryMeter,
): SteerPlan {
  const { geometry } = layout;
  const { focalLength, wavelength, modeRadius, nearMirror, farMirror } = geometry;
  const { manyModes } = walkedLaunch(launch);
  // many modes take whatever falls on the core within the aperture
  const tolerated: Tolerated =
    manyModes === null
      ? { offset: (wavelength * focalLength) / (Math.PI * modeRadius), angle: modeRadius / focalLength }
      : { offset: manyModes.numericalAperture * focalLength, angle: manyModes.coreRadius / focalLength };
  const shape: PeakShape =
    manyModes === null ? { kind: 'peak' } : { kind: 'plateau', softness: plateauSoftness };
  const reverse = reverseLight(launch, focalLength);
  const wander = reverse?.wander ?? { offset: 0, angle: 0 };
  const leftOf = (at: Cards, axis: 'horizontal' | 'vertical') =>
    leftOver(at, wander, [
      { angle: layout.deflection('M1', axis).value * finger, distance: farMirror },
      { angle: layout.deflection('M2', axis).value * finger, distance: nearMirror },
    ]);
  const startAt = (at: Cards) =>
    startForecast([leftOf(at, 'horizontal'), leftOf(at, 'vertical')], tolerated, shape, meter.seen);
  const start = startAt(cards);
  const changed = [
    { by: 'camera', start: startAt({ ...cards, readingError: cameraOffsetError }) },
    { by: 'farther', start: startAt({ ...cards, far: cards.near + 2 * (cards.far - cards.near) }) },
  ] as const;
  const left = leftOf(cards, 'horizontal');
  return {
    layout,
    cards,
    meter,
    raster: {
      angleTolerated: tolerated.angle,
      angleLost: Math.sqrt(left.angle),
      seen: meter.seen,
      horizontalTurn: layout.deflection('M2', 'horizontal').value,
      verticalTurn: layout.deflection('M2', 'vertical').value,
      updateTime: meter.updateTime,
    },
    reverse,
    serving: servingMirror({ near: nearMirror, far: farMirror }, cards),
    start,
    better: changed
      .filter((one) => one.start.median > 1.1 * start.median)
      .toSorted((a, b) => b.start.median - a.start.median),
  };
}

/** Whether a walk would as likely as not begin without anything on the meter. */
export const startsDark = ({ shareSeen }: StartForecast): boolean => shareSeen < 0.5;

/**
 * Whether two plans ask the same of a hand and count alike, so that a steer begun with one may go on with the other.
 * What a launch says besides, such as its name or its fibre's length, may differ.
 */
export function isSamePlan(one: SteerPlan, other: SteerPlan): boolean {
  const asked = ({ layout, raster, reverse }: SteerPlan) =>
    JSON.stringify([layout.geometry, layout.behindFarMirror, raster, reverse]);
  return asked(one) === asked(other);
}
