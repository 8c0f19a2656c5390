/** A screw that is turned until the light has fallen to a target: how near is near enough, and on which side of the top it stands. */

/** What was seen on the way. Light is what is read with the floor left out. */
export interface FallTo {
  /** The light was at the target, or below it. */
  readonly isReached: boolean;
  /** The side of the target that the light was last on. */
  readonly side: 'above' | 'below';
  /** How often it went from one side to the other without a stop between them. */
  readonly crossings: number;
  /** It has passed the top since it was at the target: it stands on the far flank. */
  readonly isOverTop: boolean;
}

export const notFallen: FallTo = { isReached: false, side: 'above', crossings: 0, isOverTop: false };

/**
 * Light is at its target within these factors. A hand whose screw goes by steps crosses it there and back; then the nearer step
 * must do.
 * @source twice the 10 % of an angle that hands are taken to miss; wider: our choice, the walk is told what the meter came to
 */
const near = [
  [0.7, 1.4],
  [0.5, 2],
  [0.33, 3],
] as const;

/** This much above a target is always near enough. */
const leastAbove = 1.05;

/**
 * Where light is against the target.
 *
 * @param began light at the beginning of the turn
 */
export function againstTarget(
  light: number,
  target: number,
  began: number,
  { crossings }: FallTo,
): 'above' | 'at' | 'below' {
  // too far once is a hand's haste, and no step of a screw
  const [least, widest] = near[Math.min(Math.max(0, crossings - 1), near.length - 1)]!;
  // a shallow step is not done before half of its way is
  const most = Math.max(leastAbove, Math.min(widest, Math.sqrt(Math.max(0, began / target))));
  return light > most * target ? 'above' : light < least * target ? 'below' : 'at';
}

/** A top is at least this share of the light that the turn began with: whoever turns round below it has passed none. */
const topShare = 0.7;

/**
 * With what the meter shows now.
 *
 * @param began light at the beginning of the turn
 * @param top light at the place that is being fallen from since this reading; null: nothing has just begun to fall
 */
export function withLight(
  fall: FallTo,
  light: number,
  target: number,
  began: number,
  top: number | null,
): FallTo {
  const at = againstTarget(light, target, began, fall);
  const side = at === 'at' ? fall.side : at;
  const isPassed = fall.isReached && top !== null && top >= topShare * began;
  return {
    isReached: fall.isReached || at !== 'above',
    side,
    crossings: side === fall.side ? fall.crossings : fall.crossings + 1,
    isOverTop: isPassed ? !fall.isOverTop : fall.isOverTop,
  };
}
