import { weighHighest } from './axis-belief.ts';
import {
  type AxisIndex,
  alongChances,
  type Belief,
  chanceBelow,
  curvatureChancesOf,
  estimateOf,
} from './belief.ts';
import { leftBySweep } from './left-behind.ts';
import { settings } from './ridge-settings.ts';
import { notice, type Trail } from './trail.ts';

/** What the walk along the ridge keeps in mind besides its trail. */
export interface Mind extends Belief {
  /** The axis whose row of readings is going on. */
  row: AxisIndex | null;
  /** Steps of M1 so far. */
  steps: number;
  surprises: number;
  /** Times that the meter did not fall when M1 was turned. */
  idle: number;
  /** Peaks since the first, ln, as long as every step of M1 went far. */
  peaks: number[];
  /** Highest light of the last looks at M2, ln, screw by screw: each row should be alike. */
  repeats: (readonly number[])[];
  /** It was looked whether the peak is a plateau: it is none. */
  isPeak: boolean;
}

/** What a sweep of each screw of M2 will leave, ln in all: it tells how coarse these mounts are for the light. */
export const coarseOf = ({ axes }: Mind): number =>
  axes.reduce((sum, { layout }) => sum + leftBySweep(layout, 0).expected, 0);

/** Whether little enough is lost along the ridges that with what M2 will leave 95 % are in. */
export function sureAlong(mind: Mind): boolean {
  const most = Math.min(
    settings.mostLoss,
    Math.max(settings.leastLoss, settings.allLoss - settings.leftShare * coarseOf(mind)),
  );
  return (
    chanceBelow(alongChances(mind), most) >=
    (mind.steps < settings.fewSteps ? settings.earlyChance : settings.alongChance)
  );
}

/** What the highest light of a sweep of M2 teaches; null: it told nothing. */
export function learn(trail: Trail, mind: Mind, axis: AxisIndex, seen: number | null): void {
  if (seen === null) return;
  const floors = trail.floor / Math.exp(seen);
  if (mind.row === axis && mind.axes[axis].begun) {
    if (weighHighest(mind.axes[axis], seen, floors) < settings.surprising) mind.surprises += 1;
  }
  mind.left[axis] = leftBySweep(mind.axes[axis].layout, floors);
  trail.estimate = estimateOf(mind);
}

/** Scale of the typed layout, as a factor of the curvature, outside of which it is doubted, and how surely. @source 0.6 to 1.6: our choice, from simulated benches */
const trusted = { least: 0.6, most: 1.6, chance: 0.9 } as const;
const stepsToDoubt = 3;
/** This much of the belief at either end of what it can hold: it holds no longer. */
const atTheEnd = 0.7;
const surprisesToGiveUp = 8;

/** Says so if the lengths do not fit what is read. */
export function doubtLayout(trail: Trail, mind: Mind): void {
  if (mind.steps < stepsToDoubt || trail.noticed.some(({ id }) => id === 'layout-doubtful')) return;
  for (const axis of [0, 1] as const) {
    const chances = curvatureChancesOf(mind, axis);
    const less = sum(chances, (curvature) => curvature < trusted.least);
    const more = sum(chances, (curvature) => curvature > trusted.most);
    if (Math.max(less, more) < trusted.chance) continue;
    notice(trail, { id: more > less ? 'ridge-steeper' : 'ridge-flatter' });
    notice(trail, { id: 'layout-doubtful' });
    return;
  }
}

/** Whether readings have left what the layout can explain, so that it is better forgotten. */
export const isLayoutLost = (mind: Mind): boolean =>
  mind.steps >= stepsToDoubt &&
  (mind.surprises >= surprisesToGiveUp ||
    ([0, 1] as const).some((axis) => {
      const chances = curvatureChancesOf(mind, axis);
      return chances[0]!.chance > atTheEnd || chances.at(-1)!.chance > atTheEnd;
    }));

const sum = (
  chances: ReturnType<typeof curvatureChancesOf>,
  counts: (curvature: number) => boolean,
): number => chances.reduce((total, { curvature, chance }) => total + (counts(curvature) ? chance : 0), 0);
