import { Refusal } from '../refusal.ts';
import { writeValue } from '../units/write.ts';
import type { MeterUnit } from './meter-unit.ts';
import { readLog } from './read-log.ts';

/** What is in a log: `240 readings over 24 s`; or why it cannot be played. */
export type LogTold =
  | { readonly ok: true; readonly words: string }
  | { readonly ok: false; readonly what: string; readonly mend: string };

/** What a file of readings would play, in words, or why it cannot be played. */
export function logWords(text: string, unit: MeterUnit): LogTold {
  try {
    const readings = readLog(text, unit);
    const last = readings.at(-1)?.after ?? 0;
    const count = readings.length === 1 ? '1 reading' : `${readings.length} readings`;
    return { ok: true, words: `${count} over ${writeValue(last, 'time')}` };
  } catch (error) {
    const [parts] = error instanceof Refusal ? error.parts : [];
    if (parts === undefined) throw error;
    return { ok: false, what: parts.what, mend: parts.mend };
  }
}
