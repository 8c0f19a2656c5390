import { type AxisIndex, estimateOf } from './belief.ts';
import { compared, quantileLeft } from './left-behind.ts';
import { axes, near, noticeRepeats } from './near-mirror.ts';
import { coarseOf, learn, type Mind } from './ridge-mind.ts';
import { settings } from './ridge-settings.ts';
import { type Asking, isSpent, stand, standsAt, sweep, type Trail } from './trail.ts';

/** M2 of both axes until the meter stands where it was highest, or as near to it as these mounts let a hand come. */
export function* polishNear(trail: Trail, mind: Mind): Asking<void> {
  const order: readonly AxisIndex[] = mind.row === 1 ? [0, 1] : [1, 0];
  for (const [turn, axis] of order.entries()) {
    const highest: number[] = [];
    const standing: number[] = [];
    for (let i = 0; i < settings.polishTries && !isSpent(trail); i++) {
      const coarse = coarseOf(mind);
      standsAt(trail, { kind: 'polish', axis: turn === 0 ? 0 : 1, tries: i, coarse });
      const seen = yield* sweep(trail, near(axes[axis]!), 'polish');
      learn(trail, mind, axis, seen);
      const stands = yield* stand(trail, 'compare');
      if (seen === null || stands === null) break;
      highest.push(seen);
      standing.push(stands);
      const before = mind.left[axis];
      const mean = highest.reduce((sum, ln) => sum + ln, 0) / highest.length;
      mind.left[axis] = compared(before, mean - stands, trail.floor / Math.exp(stands));
      trail.estimate = estimateOf(mind);
      // every sweep is a new throw: a mount that is coarse for the light must be lucky, and in the end content with less
      const content = settings.content + settings.contentMore * i;
      if (mind.left[axis].expected < Math.max(settings.left, quantileLeft(before, content))) break;
    }
    mind.repeats.push(highest);
    noticeRepeats(trail, { highest, standing });
  }
}
