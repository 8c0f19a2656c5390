import {
  answerOf,
  heardInTurn,
  liveText,
  meterCounting,
  moveText,
  newTurn,
  notPressed,
  Refusal,
  seenWhilePressed,
  turnContext,
  turnNow,
  turnSaid,
  type WalkAct,
  type WalkMeter,
  type WalkNow,
  type WalkStep,
} from '@coreward/bench';
import { type ListenedTo, listenTo, unitOfLines } from './device-lines.ts';
import { pressEnter } from './enter-press.ts';
import type { LedWalk } from './led-walk.ts';
import type { Shell } from './shell.ts';
import { wrapHanging } from './text/wrap.ts';
import { readWalkLine } from './walk-line.ts';
import { whicheverFirst } from './whichever-first.ts';

/** What may be typed while a device reads. */
const others = 'n did not work, s skip, u undo, a begin anew, q stop';
function keysFor(step: WalkStep): string {
  if (answerOf(step) === null) return `Enter when it is done, ${others}`;
  if (step.kind === 'strip') return `Enter takes the reading before, Enter again the one after, ${others}`;
  // that the power was raised only a hand can say
  if (step.kind === 'stand' && step.why === 'after-power') return `Enter takes the reading, ${others}`;
  return `it goes on by itself; Enter takes it now, ${others}`;
}
/** Another meter reads than before. */
const otherReadings =
  'Readings of two meters do not compare: the walk begins anew from where the screws stand.\n';
/** The line with the live reading is written anew so often, ms. */
const writeEvery = 200;

/**
 * Leads a walk whose light a device tells, line by line: both hands stay at the screws, and a step is answered once its reading
 * rests at its goal. The keyboard stays one's own.
 *
 * @param asked says a step; `keys` are what may be typed
 */
export async function walkedByLines(
  led: LedWalk,
  path: string,
  asked: (now: WalkNow, meter: WalkMeter, keys: string) => string,
  shell: Shell,
): Promise<WalkNow> {
  shell.talk(`Listening to ${path} …\n`);
  const device = await listenTo(path, shell);
  const meter = meterOf(device, path);
  const reads = { instrument: path, meter, floor: null, goesOn: true } as const;
  if (await led.readBy(path, meter)) shell.talk(otherReadings);
  const line = liveLine(shell);
  const hand = shell.lines()[Symbol.asyncIterator]();
  const heard = whicheverFirst(device.readings, hand);
  let hasHand = true;
  let hasDevice = true;
  try {
    for (;;) {
      const session = led.session();
      const now = led.now();
      const context = turnContext(now, session, null);
      // what comes after the climb is asked of somebody who can answer it
      if (context === null || (now.verdict !== null && !hasHand)) return now;
      const { step } = context;
      shell.talk(asked(now, meter, keysFor(step)));
      line.begin();
      let turn = newTurn;
      let pressed = notPressed;
      let isAnswered = false;
      const act = async (done: WalkAct): Promise<void> => {
        await led.act(done);
        isAnswered = true;
      };
      while (!isAnswered) {
        const next = await heard.next();
        if (next.done === true) return now;
        const event = next.value;
        if (event.done) {
          if (event.from === 'other') hasHand = false;
          else hasDevice = false;
          if (!hasDevice) line.say('The device has ended: type the readings, or q to stop.');
          // the rest of a file is still to be heard; a step that only a hand can answer is the end
          if (!hasHand && !hasDevice) return now;
          continue;
        }
        if (event.from === 'one') {
          turn = heardInTurn(turn, context, event.value);
          const at = turnNow(turn, context, false);
          pressed = seenWhilePressed(pressed, at.isReady, shell.clock());
          const { short, mend } = turnSaid(at, step, meter);
          line.show(at.shown === null ? '–' : liveText(at.shown, meter), short, mend);
          if (at.isSettled && at.take !== null) {
            await act({ do: 'answer', answer: at.take });
            line.say(moveText(step, at.take, meter));
          }
          continue;
        }
        const written = event.value.trim().toLowerCase();
        if (written === 'a') await act({ do: 'reads', reads, anew: true });
        else if (written === '' && hasDevice) {
          const press = pressEnter(pressed, turnNow(turn, context, false), step, meter, shell.clock());
          if (press.do === 'answer') await act({ do: 'answer', answer: press.answer });
          else {
            // the reading after is one of its own, not the rest of the one before
            if (press.pressed.before !== pressed.before) turn = newTurn;
            pressed = press.pressed;
            line.say(press.text);
          }
        } else {
          const said = readWalkLine(event.value, step, { meter, shown: now.last, practised: false });
          if (said.do === 'quit') return now;
          if (said.do === 'say') line.say(said.text);
          if (said.do === 'undo') await act({ do: 'undo' });
          if (said.do === 'answer') await act({ do: 'answer', answer: said.answer });
        }
      }
    }
  } finally {
    // what is still waited for would keep the program alive
    await Promise.all([hand.return?.(), device.readings.return?.()]);
  }
}

function meterOf(device: ListenedTo, path: string): WalkMeter {
  const meter = meterCounting(unitOfLines(device));
  if (meter !== null) return meter;
  throw new Refusal({
    where: `--lines ${path}`,
    what: 'it tells no measure of light',
    mend: 'Name a meter that prints numbers.',
  });
}

/** The line that a live reading is written on: on a terminal over and over, elsewhere whenever its words change. */
function liveLine(shell: Shell) {
  let said = '';
  let writtenAt = Number.NEGATIVE_INFINITY;
  let isOpen = false;
  const close = (): void => {
    if (isOpen) shell.talk('\n');
    isOpen = false;
  };
  const say = (text: string): void => {
    close();
    shell.talk(`${wrapHanging(text, '    ', shell.width).join('\n')}\n`);
  };
  return {
    begin: (): void => {
      said = '';
    },
    say,
    show(reading: string, short: string, mend: string | null): void {
      const isNew = short !== said;
      said = short;
      if (shell.inputIsKeyboard && (isNew || shell.clock() - writtenAt >= writeEvery)) {
        writtenAt = shell.clock();
        isOpen = true;
        shell.talk(
          `\r    ${`${reading.padEnd(10)} ${short}`.slice(0, shell.width - 5).padEnd(shell.width - 5)}`,
        );
      } else if (isNew && !shell.inputIsKeyboard) say(`${reading.padEnd(10)} ${short}`);
      if (isNew && mend !== null) say(mend);
    },
  };
}
