import {
  answerOf,
  moveText,
  type PracticeBench,
  practise,
  type WalkMeter,
  type WalkNow,
} from '@coreward/bench';
import type { LedWalk } from './led-walk.ts';
import type { Shell } from './shell.ts';
import { wrapHanging } from './text/wrap.ts';
import { readWalkLine, walkKeys } from './walk-line.ts';

/**
 * Asks until nothing is left to ask, the lines end, or somebody has had enough.
 *
 * @param asked says a step; `keys` are what may be typed
 */
export async function walkedByTyping(
  led: LedWalk,
  bench: PracticeBench | null,
  asked: (now: WalkNow, meter: WalkMeter, keys: string) => string,
  shell: Shell,
): Promise<WalkNow> {
  const { meter } = led.session();
  const lines = shell.lines()[Symbol.asyncIterator]();
  try {
    for (let now = led.now(); ; now = led.now()) {
      // behind the verdict a simulated bench has nothing more to show
      if (now.ask === null || (bench !== null && now.verdict !== null)) return now;
      const { step } = now.ask;
      shell.talk(asked(now, meter, keysOf(now, bench !== null)));
      const next = await lines.next();
      // without a keyboard, a practice walk goes on by itself
      if (next.done === true && bench === null) return now;
      const shown = now.last ?? now.floor;
      const line =
        next.done === true
          ? ({ do: 'hand' } as const)
          : readWalkLine(next.value, step, { meter, shown, practised: bench !== null });
      switch (line.do) {
        case 'quit':
          return now;
        case 'say':
          shell.talk(`${wrapHanging(line.text, '   ', shell.width).join('\n')}\n`);
          break;
        case 'undo':
          await led.act({ do: 'undo' });
          break;
        case 'hand': {
          const answer = bench === null ? null : practise(bench, { do: 'hand', step }).answer;
          if (answer === null) break;
          await led.act({ do: 'answer', answer }, true);
          shell.talk(`   The hand: ${moveText(step, answer, meter)}\n`);
          break;
        }
        case 'answer':
          await led.act({ do: 'answer', answer: line.answer });
      }
    }
  } finally {
    // a keyboard that is still listened to would keep the program alive
    await lines.return?.();
  }
}

/** What may be typed. */
function keysOf({ ask }: WalkNow, practised: boolean): string {
  const isPlain = ask !== null && answerOf(ask.step) === null;
  return `${practised ? 'Enter lets the hand do it; ' : isPlain ? 'Enter when it is done; ' : ''}${walkKeys}`;
}
