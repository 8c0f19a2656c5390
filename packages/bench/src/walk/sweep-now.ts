/** Where a sweep stands: which way to the peak of its screw, and whether it is come back to. */
import { clearlyOff, heldPeak, isAbovePeaks, isBackAtPeak, isPeakKnown } from '../instrument/peak-hold.ts';
import { gainsBack, mostMissing } from './bring-back.ts';
import { isDark, type Turn, type TurnContext } from './live-turn.ts';
import type { WalkAnswer } from './step.ts';
import { hasStoodStill, type Seen, type TurnNow, told } from './turn-sign.ts';

/** So long a sweep has shown no light, ms. */
const darkAfter = 4_000;

/** That it falls on is told for so long, ms: a hand that has turned round may be in the slack by then. */
const fallTold = 2_000;
/** The least of many estimates of noise is so much too low. @source of some dozen second differences each, roughly: our choice */
const leastOfMany = 1.6;

/** A hand that has turned at all has seen so little of the light it began with. @source our choice */
const hasLeft = 0.7;

/** A sweep, by what was seen of it. */
export function sweeping(turn: Turn, { step, floor, peak }: TurnContext, seen: Seen): TurnNow {
  const { hold, at, standing } = seen;
  const dark = floor ?? 0;
  const best = heldPeak(hold);
  const goal = best.value;
  const since = at.t - (turn.first?.t ?? at.t);
  if (turn.isCovered) return { ...told(seen), goal, sign: 'covered' };
  if (isDark(best, floor)) return { ...told(seen), sign: since > darkAfter ? 'dark' : 'seek' };
  const take: WalkAnswer = { outcome: 'did', highest: goal };
  // at rest more readings tell, and the word for it does not flicker
  const scatter = leastOfMany * turn.quietest * (goal - dark);
  const isBack = isBackAtPeak(hold, standing.isAtRest ? standing : at, dark, scatter);
  const began = (turn.first?.value ?? 0) - dark;
  const before = (peak ?? 0) - dark;
  const isAsked = step.kind === 'sweep' && step.why === 'bring-back' && began < mostMissing * before;
  const isMissing = isAsked && goal - dark < gainsBack * began;
  // a hand that rests where it began has come back from a rise that was none
  if (isMissing && standing.isAtRest && turn.lowest - dark < hasLeft * began)
    return { ...told(seen), goal, take, sign: 'not-back' };
  if (hold.peaks.length === 0) {
    if (hasStoodStill(turn, seen)) return { ...told(seen), goal, take, sign: 'still' };
    const { turning, before } = hold;
    const hasRisen = turning.value - before.value > clearlyOff(turning, before, dark);
    return { ...told(seen), take, sign: hasRisen ? 'rising' : 'seek' };
  }
  // neither a start that was left nor a place that is far outshone is a peak
  if (isAbovePeaks(hold, dark, scatter)) return { ...told(seen), take, sign: 'rising' };
  const fallsOn = hold.fellOn !== null && at.t - hold.fellOn < fallTold;
  if (!isPeakKnown(hold)) {
    if (hold.rises) return { ...told(seen), take, sign: 'rising' };
    return { ...told(seen), goal, take, sign: fallsOn ? 'falls-on' : 'other-way' };
  }
  if (isMissing) return { ...told(seen), goal, take, sign: 'not-back' };
  if (isBack)
    return {
      ...told(seen),
      goal,
      take,
      sign: 'back-at-peak',
      isReady: true,
      isSettled: standing.isAtRest,
    };
  const behind = hold.passes > 1 ? 'passed-again' : fallsOn ? 'falls-on' : 'past';
  const sign = hold.rises ? 'nearing' : behind;
  return { ...told(seen), goal, take, sign };
}
