/** Where a live turn stands: what is to be said to the hand, and the answer that it only has to confirm. */
import { heldPeak } from '../instrument/peak-hold.ts';
import { shownNow, standingNow } from '../instrument/reading-window.ts';
import { centring, detuning } from './fall-now.ts';
import { ofItsLight } from './light-noise.ts';
import { isDark, type Turn, type TurnContext, wrongScrew } from './live-turn.ts';
import { sweeping } from './sweep-now.ts';
import { type Seen, stands, type TurnNow, told } from './turn-sign.ts';

/** Where a turn stands, the instrument silent or not. */
export function turnNow(turn: Turn, context: TurnContext, isSilent: boolean): TurnNow {
  const standing = standingNow(turn.window, context.noise, context.floor ?? 0);
  const raw = shownNow(turn.window, context.noise, context.floor ?? 0);
  const shown = raw === null ? null : ofItsLight(raw, turn.window, context.floor ?? 0);
  const held = context.step.kind === 'sweep' && turn.hold !== null ? heldPeak(turn.hold).value : null;
  const none = {
    shown: shown?.value ?? turn.last?.value ?? null,
    held,
    goal: null,
    take: null,
    isReady: false,
    wrongScrew: wrongScrew(context),
    isSettled: false,
  };
  if (isSilent || turn.last?.value === null) return { ...none, shown: null, sign: 'gap' };
  if (turn.isSpoiled || turn.tooMuch > 0)
    return { ...none, shown: turn.last?.value ?? null, sign: 'too-much' };
  if (none.wrongScrew !== null) return { ...none, sign: 'wrong-screw' };
  if (shown === null || standing === null || turn.hold === null) return { ...none, sign: 'listening' };
  const seen: Seen = { ...none, shown: shown.value, at: shown, standing, hold: turn.hold };
  const { step } = context;
  switch (step.kind) {
    case 'floor':
      return atFloor(turn, seen);
    case 'stand':
    case 'strip':
      return standingStill(turn, context, seen);
    case 'sweep':
      return sweeping(turn, context, seen);
    case 'detune':
      return detuning(turn, context, seen, step.target);
    case 'middle':
      return centring(turn, context, seen, step.target);
    case 'turn':
    case 'focus':
      return { ...told(seen), sign: 'by-count', take: { outcome: 'did' }, isReady: true };
  }
}

/** The beam is blocked by a hand: only a clear fall of the light tells that it is. */
function atFloor(turn: Turn, seen: Seen): TurnNow {
  const { value, isAtRest } = seen.standing;
  const hasFallen = value < turn.highest / 2;
  const take = stands(seen);
  const sign = hasFallen ? (isAtRest ? 'resting' : 'settling') : 'block';
  const isReady = hasFallen && isAtRest;
  return { ...told(seen), take, sign, isReady, isSettled: isReady };
}

function standingStill(turn: Turn, { step, floor }: TurnContext, seen: Seen): TurnNow {
  const { isAtRest } = seen.standing;
  const take = stands(seen);
  if (isDark(seen.at, floor)) {
    // before the first peak it may well be dark: then a hand takes it that means it
    if (step.kind === 'stand' && step.why === 'start') return { ...told(seen), take, sign: 'let-through' };
    return { ...told(seen), sign: turn.isCovered ? 'covered' : 'dark' };
  }
  const sign = isAtRest ? 'resting' : 'settling';
  // that the power was raised, or is not to be, only a hand can say
  const mayGoOn = step.kind === 'stand' && step.why !== 'after-power';
  return { ...told(seen), take, sign, isReady: isAtRest, isSettled: isAtRest && mayGoOn };
}
