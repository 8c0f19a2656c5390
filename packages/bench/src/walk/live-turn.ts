/** One step of a walk while a meter is live: what it shows is followed, reading by reading. What it comes to stands in turn-now. */
import {
  clearlyOff,
  floorWanders,
  heldPeak,
  holdFrom,
  type PeakHold,
  withShown,
} from '../instrument/peak-hold.ts';
import type { Reading } from '../instrument/reading.ts';
import {
  emptyWindow,
  isSetBack,
  type ReadingWindow,
  type Shown,
  shownNow,
  withHeard,
} from '../instrument/reading-window.ts';
import { type FallTo, notFallen, withLight } from './fall-to.ts';
import { ofItsLight } from './light-noise.ts';
import type { Screw, WalkStep } from './step.ts';
import { isSameScrew } from './turned-screw.ts';

/** What a turn is judged by. Readings are in the unit of the meter. */
export interface TurnContext {
  readonly step: WalkStep;
  /** What the meter shows with the beam blocked; null: nobody has said. */
  readonly floor: number | null;
  /** The last highest reading of the walk; null: none was taken. */
  readonly peak: number | null;
  /** Standard deviation of a single reading, as long as the readings themselves do not tell; null: not known. */
  readonly noise: number | null;
  /** The screw that was turned last in this step; null: nobody knows, as on a real bench. */
  readonly turned: Screw | null;
}

/** Another screw than the one that is asked was turned last; null: not that anybody knows. */
export function wrongScrew({ step, turned }: TurnContext): Screw | null {
  if (turned === null || !('screw' in step)) return null;
  return isSameScrew(turned, step.screw) ? null : turned;
}

/** A turn that goes on. The same readings always lead to the same turn. Its times are of a clock of its own, which nobody sets. */
export interface Turn {
  readonly window: ReadingWindow;
  readonly last: Reading | null;
  /** By how much that clock is ahead of the station's, ms. */
  readonly ahead: number;
  /** Null until the meter has shown something. */
  readonly hold: PeakHold | null;
  readonly first: Shown | null;
  readonly lowest: number;
  readonly highest: number;
  /** Least relative scatter of what was shown, floor left out: what is above it is a hand that moves. */
  readonly quietest: number;
  /** Readings at the upper end in a row; several spoil the turn, for how high its peak was nobody can say. */
  readonly tooMuch: number;
  readonly isSpoiled: boolean;
  /** The newest moment with light to speak of, ms. */
  readonly litAt: number | null;
  /** The light went out at once, as no screw can do it. */
  readonly isCovered: boolean;
  /** How often the light came down to the target of a plateau's edge. */
  readonly edges: number;
  readonly isBeyondEdge: boolean;
  /** Of a fall to a target. */
  readonly fall: FallTo;
}

export const newTurn: Turn = {
  window: emptyWindow,
  last: null,
  ahead: 0,
  hold: null,
  first: null,
  lowest: Number.POSITIVE_INFINITY,
  highest: Number.NEGATIVE_INFINITY,
  quietest: Number.POSITIVE_INFINITY,
  tooMuch: 0,
  isSpoiled: false,
  litAt: null,
  isCovered: false,
  edges: 0,
  isBeyondEdge: false,
  fall: notFallen,
};

/** One reading at the upper end may be a stray; so many are none. */
const spoiledBy = 2;
/** Light that goes from this share of the best to nothing within so long, ms, was covered. */
const [litShare, coveredWithin] = [0.3, 400] as const;
/** The edge of a plateau is reached this near its target, */
const edgeReached = 1.05;
/** and left again so far above it. */
export const edgeLeft = 1.3;

/** A longer time without a reading, ms, is none of the turn: nothing was heard in it, or the station's clock was set forth. @source our choice */
const unheard = 60_000;

/** What the station's clock has jumped by from one reading to the next, ms. */
function jumped(from: Reading | null, { t }: Reading): number {
  if (from === null) return 0;
  return isSetBack(from.t, t) || t - from.t > unheard ? t - from.t : 0;
}

/** With one more reading, its time by the station's clock. */
export function heardInTurn(turn: Turn, context: TurnContext, told: Reading): Turn {
  const ahead = turn.ahead - jumped(turn.last, told);
  const reading = { ...told, t: told.t + ahead };
  // what another screw does to the light is no peak of this one, and says nothing of what is shown once it is turned back
  const isOther = wrongScrew(context) !== null;
  const window = isOther ? emptyWindow : withHeard(turn.window, reading);
  const tooMuch = reading.saturated ? turn.tooMuch + 1 : 0;
  const heard = {
    ...turn,
    window,
    last: told,
    ahead,
    tooMuch,
    isSpoiled: turn.isSpoiled || (tooMuch >= spoiledBy && context.step.kind !== 'floor'),
  };
  if (isOther || window === turn.window || reading.saturated) return heard;
  const shown = shownNow(window, context.noise, context.floor ?? 0);
  if (shown === null || shown.t !== reading.t) return heard;
  return followed(heard, context, ofItsLight(shown, window, context.floor ?? 0));
}

function followed(turn: Turn, { step, floor }: TurnContext, shown: Shown): Turn {
  const dark = floor ?? 0;
  const hold = turn.hold === null ? holdFrom(shown) : withShown(turn.hold, shown, dark);
  const light = shown.value - dark;
  const isLit =
    light > litShare * (heldPeak(hold).value - dark) &&
    light > clearlyOff({ ...shown, value: dark }, shown, dark);
  const wentOut =
    !isLit && turn.litAt !== null && shown.t - turn.litAt <= coveredWithin && isDark(shown, floor);
  const target = step.kind === 'middle' ? step.target - dark : null;
  const turnsDown = turn.hold?.rises === true && !hold.rises;
  // what it fell from at first is where it began
  const top = turnsDown && turn.hold.peaks.length > 0 ? turn.hold.turning.value - dark : null;
  const began = (turn.first ?? shown).value - dark;
  const isAtEdge = target !== null && light <= edgeReached * target;
  const hasLeftEdge = target !== null && light > edgeLeft * target;
  return {
    ...turn,
    hold,
    first: turn.first ?? shown,
    lowest: Math.min(turn.lowest, shown.value),
    highest: Math.max(turn.highest, shown.value),
    quietest: light > 0 ? Math.min(turn.quietest, shown.sd / light) : turn.quietest,
    litAt: isLit ? shown.t : turn.litAt,
    isCovered: isDark(shown, floor) && (turn.isCovered || wentOut),
    edges: isAtEdge && !turn.isBeyondEdge ? turn.edges + 1 : turn.edges,
    isBeyondEdge: isAtEdge || (turn.isBeyondEdge && !hasLeftEdge),
    fall: step.kind === 'detune' ? withLight(turn.fall, light, step.target - dark, began, top) : turn.fall,
  };
}

/** Light that noise alone would not bring. */
const darkDeviations = 3;

/** Whether there is no more light than with the beam blocked. */
export function isDark({ value, sd }: Shown, floor: number | null): boolean {
  // a meter whose floor nobody knows is surely dark only where it shows nothing at all
  return floor === null ? value <= 0 : value - floor <= Math.max(darkDeviations * sd, floorWanders * floor);
}
