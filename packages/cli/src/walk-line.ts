import { answerOf, readReading, type WalkAnswer, type WalkMeter, type WalkStep } from '@coreward/bench';
import type { TypedLine } from './typed-line.ts';

/** What may be typed, in the order of how often it is. */
export const walkKeys = 'a reading, n did not work, s skip, u undo, q stop';

/**
 * A line as somebody types it with the other hand on a screw.
 *
 * @param shown the reading last shown, whose unit a bare number takes
 * @param practised whether a simulated hand stands by, to whom an empty line hands the step
 */
export function readWalkLine(
  line: string,
  step: WalkStep,
  { meter, shown, practised }: { meter: WalkMeter; shown: number | null; practised: boolean },
): TypedLine<WalkAnswer> {
  const written = line.trim();
  const needs = answerOf(step);
  switch (written.toLowerCase()) {
    case 'q':
      return { do: 'quit' };
    case 'u':
      return { do: 'undo' };
    case 's':
      return { do: 'answer', answer: { outcome: 'skipped' } };
    case 'n':
      return { do: 'answer', answer: { outcome: 'did-not-work' } };
    case '':
      if (practised) return { do: 'hand' };
      if (needs === null) return { do: 'answer', answer: { outcome: 'did' } };
      return { do: 'say', text: `Nothing was typed. Type ${walkKeys}.` };
  }
  if (needs === null)
    return { do: 'say', text: 'No reading is asked for here: press Enter when it is done.' };
  const pieces = needs === 'before-and-standing' ? written.split(/\s*;\s*/u) : [written];
  const readings: number[] = [];
  for (const piece of pieces) {
    const read = readReading(piece, meter, shown);
    if (!read.ok) return { do: 'say', text: `${read.what}. ${read.mend}` };
    readings.push(read.reading);
  }
  const [first = 0, second] = readings;
  if (needs !== 'before-and-standing') return { do: 'answer', answer: { outcome: 'did', [needs]: first } };
  if (second === undefined) return { do: 'say', text: 'Type both readings, such as `2.4; 2.3`.' };
  return { do: 'answer', answer: { outcome: 'did', before: first, standing: second } };
}
