import { readOffset, type SteerAnswer, type SteerStep, type WentTo, waysOf } from '@coreward/bench';
import type { TypedLine } from './typed-line.ts';

/** What is typed where only a turn is asked for. */
const whenDone = 'Enter when it is done';
/** What four offsets look like. */
const offsetsAsked =
  'four offsets in mm, such as `1.2; -0.3; -2; 0.4`: right and up before the lens, then behind M1';

/**
 * What may be typed at a step.
 *
 * @param practised whether a simulated hand stands by
 */
export function steerKeys(step: SteerStep, practised: boolean): string {
  const own = keysOf(step);
  // an empty line is the hand's
  const keys = practised ? ['Enter lets the hand do it', ...(own === whenDone ? [] : [own])] : [own];
  return [...keys, 'u undo, q stop'].join('; ');
}

function keysOf(step: SteerStep): string {
  switch (step.kind) {
    case 'sense':
      return waysOf(step.screw).join(' or ');
    case 'offsets':
      return offsetsAsked;
    case 'turn':
      return whenDone;
    case 'light':
      return 'y there is light, n nothing';
    case 'raster':
      return step.move.do === 'line' ? 'y there is light, n nothing on this line' : whenDone;
  }
}

/**
 * A line as somebody types it with the other hand on a screw.
 *
 * @param practised whether a simulated hand stands by, to whom an empty line hands the step
 */
export function readSteerLine(line: string, step: SteerStep, practised: boolean): TypedLine<SteerAnswer> {
  const written = line.trim().toLowerCase();
  if (written === 'q') return { do: 'quit' };
  if (written === 'u') return { do: 'undo' };
  if (written === '' && practised) return { do: 'hand' };
  const answer = answerIn(written, step);
  if (typeof answer !== 'string') return { do: 'answer', answer };
  return { do: 'say', text: answer };
}

/** The answer, or why it is none. */
function answerIn(written: string, step: SteerStep): SteerAnswer | string {
  const typed = `Type ${keysOf(step)}.`;
  switch (step.kind) {
    case 'sense': {
      const to = waysOf(step.screw).find((way) => isMeant(way, written));
      return to === undefined ? typed : { outcome: 'went', to };
    }
    case 'offsets':
      return offsetsIn(written);
    case 'turn':
      return doneIn(written);
    case 'light':
      return lightIn(written) ?? typed;
    case 'raster':
      return step.move.do === 'line' ? (lightIn(written) ?? typed) : doneIn(written);
  }
}

/** Up is never shortened to `u`, which takes the last answer back. */
const isMeant = (way: WentTo, written: string): boolean =>
  written === way || (written === way.slice(0, 1) && written !== 'u');

const doneIn = (written: string): SteerAnswer | string =>
  written === '' ? { outcome: 'did' } : 'Nothing is to be read here: press Enter when it is done.';

function lightIn(written: string): SteerAnswer | null {
  if (written === 'y' || written === 'yes') return { outcome: 'light' };
  return written === 'n' || written === 'no' ? { outcome: 'dark' } : null;
}

/** Between semicolons, or between spaces where they are bare numbers. */
function offsetsIn(written: string): SteerAnswer | string {
  const pieces = written.split(written.includes(';') ? /\s*;\s*/u : /\s+/u);
  const [nearX, nearY, farX, farY, more] = pieces.map(readOffset);
  for (const read of [nearX, nearY, farX, farY]) {
    if (read === undefined) return `Type ${offsetsAsked}.`;
    if (!read.ok) return `${read.what}. ${read.mend}`;
  }
  if (more !== undefined) return 'These are more than four offsets. Type right and up of each card.';
  const of = (read: typeof nearX): number => (read?.ok === true ? read.value : 0);
  return {
    outcome: 'read',
    offsets: { near: { x: of(nearX), y: of(nearY) }, far: { x: of(farX), y: of(farY) } },
  };
}
