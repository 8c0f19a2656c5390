import { OutOfRange } from '@coreward/optics';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { type AnswerWords, answerWords } from './answer-words.ts';
import { assign, type RawSetting } from './assign.ts';
import { thinned } from './curve-drawing.ts';
import type { Gauge, GaugeCurve } from './gauge.ts';
import type { Picture } from './picture.ts';
import { readReadings } from './read-readings.ts';
import { finishedText, type Sheet } from './sheet.ts';
import { type DrawerEntry, drawerEntries } from './to-drawer.ts';

/** What a sheet of readings says, as people read it, or what is refused of it. */
export type Measured =
  | {
      readonly kind: 'measured';
      readonly answers: readonly AnswerWords[];
      readonly remarks: readonly string[];
      /** Thinned out where crowded. */
      readonly curves: readonly GaugeCurve[];
      readonly entries: readonly DrawerEntry[];
      /** What was given and has no use. */
      readonly unused: readonly string[];
      readonly readings: number;
    }
  | { readonly kind: 'refused'; readonly refused: readonly RefusalParts[] };

/**
 * A gauge's answers to what lies on its sheet. What is typed as a setting goes before what stands in the text.
 *
 * @param picture for a gauge that takes one, or the first of two
 * @param file what the readings are called in refusals
 * @param reversePicture for a gauge that takes two, the reverse beam's
 */
export function measured(
  gauge: Gauge,
  sheet: Sheet,
  picture: Picture | null,
  file: string,
  reversePicture: Picture | null = null,
): Measured {
  try {
    const typed: readonly RawSetting[] = Object.entries(sheet.settings)
      .filter(([, text]) => text.trim() !== '')
      .map(([name, text]) => ({ name, text: text.trim(), where: file }));
    const text = finishedText(sheet.text);
    const raw =
      text.trim() === '' && (picture !== null || gauge.columns.every(({ needed }) => !needed))
        ? { where: file, columns: [], settings: [] }
        : readReadings(text, file);
    const { readings, detectorUnit, unused } = assign(gauge, {
      ...raw,
      settings: [...typed, ...raw.settings],
    });
    const result = gauge.measure({ ...readings, picture, reversePicture });
    return {
      kind: 'measured',
      answers: result.answers.map(answerWords),
      remarks: result.remarks,
      curves: result.curves.map((curve) => thinned(withUnit(curve, detectorUnit))),
      entries: drawerEntries(gauge, result, readings.settings),
      unused,
      readings: Math.max(0, ...Object.values(readings.columns).map(({ length }) => length)),
    };
  } catch (error) {
    if (error instanceof Refusal) return { kind: 'refused', refused: error.parts };
    // what was typed lies outside what a formula knows: the typist's to mend
    if (error instanceof OutOfRange) {
      const { where, what, mend } = error;
      return { kind: 'refused', refused: [{ where: `${file} ${where}`, what, mend }] };
    }
    throw error;
  }
}

const withUnit = (curve: GaugeCurve, unit: string): GaugeCurve =>
  curve.ofDetector && unit !== '' ? { ...curve, up: `${curve.up} (${unit})` } : curve;
