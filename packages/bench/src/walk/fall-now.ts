/** Where a turn stands whose reading is to fall: down to the target of a detuning, or to both edges of a plateau. */
import { againstTarget } from './fall-to.ts';
import { edgeLeft, isDark, type Turn, type TurnContext } from './live-turn.ts';
import { hasStoodStill, type Seen, stands, type TurnNow, told } from './turn-sign.ts';

/** Light that rises so far above where it began did not rise by slack or noise. @source our choice */
const wellAbove = 1.5;

/** A detuning, by what was seen of it. */
export function detuning(turn: Turn, { floor }: TurnContext, seen: Seen, target: number): TurnNow {
  const dark = floor ?? 0;
  const { fall } = turn;
  const light = seen.at.value - dark;
  const here = { ...told(seen), goal: target };
  if (turn.isCovered) return { ...here, sign: 'covered' };
  const isLit = !isDark(seen.at, floor);
  const take = isLit ? stands(seen) : null;
  if (fall.isOverTop) return { ...here, take, sign: 'over-top' };
  const began = (turn.first?.value ?? seen.shown) - dark;
  const against = againstTarget(light, target - dark, began, fall);
  if (against === 'above') {
    if (fall.isReached) return { ...here, sign: seen.hold.rises ? 'back-too-far' : 'lower' };
    if (seen.hold.rises && light > wellAbove * began) return { ...here, sign: 'wrong-way' };
    return { ...here, sign: hasStoodStill(turn, seen) ? 'still' : 'lower' };
  }
  if (against === 'below' || !isLit) return { ...here, take, sign: 'too-low' };
  return { ...here, take, sign: 'at-target', isReady: true, isSettled: seen.standing.isAtRest };
}

/** The middle of a plateau. */
export function centring(turn: Turn, { floor }: TurnContext, seen: Seen, target: number): TurnNow {
  if (turn.isCovered) return { ...told(seen), goal: target, sign: 'covered' };
  if (turn.edges < 2) {
    const sign = hasStoodStill(turn, seen) ? 'still' : turn.edges === 0 ? 'first-edge' : 'second-edge';
    return { ...told(seen), goal: target, sign };
  }
  const dark = floor ?? 0;
  if (turn.isBeyondEdge || seen.at.value - dark < edgeLeft * (target - dark))
    return { ...told(seen), sign: 'to-middle' };
  return { ...told(seen), take: stands(seen), sign: 'to-middle', isReady: true };
}
