import { expect, test } from 'vitest';
import { readingText, readReading } from './reading-text.ts';
import { stepSentence } from './step-sentence.ts';
import { bestTone, toneOf } from './tone.ts';
import { truthTexts } from './truth-words.ts';
import { ridgePicture, traceOf } from './walk-pictures.ts';
import { estimateText, verdictText } from './walk-words.ts';

const estimate = {
  missing: 0.04,
  missingLow: 0.01,
  missingHigh: 0.09,
  horizontalShare: 0.9,
  ridge: { horizontal: { value: 0.3, uncertainty: 0.1 }, vertical: { value: 0, uncertainty: 0.2 } },
};

test('what is left is never said without its doubt, and by eye not at all', () => {
  expect(estimateText(estimate, 'power')).toBe(
    'About 4 % of the light still missing, 1 to 9 %, mostly horizontal.',
  );
  expect(estimateText({ ...estimate, missing: null }, 'power')).toContain('cannot be said');
  expect(estimateText(estimate, 'eye')).not.toMatch(/\d/u);
  const end = { reason: 'reached', claims95: true, estimate, remarks: [] } as const;
  expect(verdictText(end, 'eye').join(' ')).not.toContain('%');
  expect(verdictText({ ...end, claims95: false }, 'typed').join(' ')).toContain('not claimed');
});

test('a bare number takes the unit on the screen, a comma is a point, and words are refused with a mend', () => {
  expect(readingText(2.13e-3, 'power')).toBe('2.13 mW');
  expect(readReading('2,2', 'power', 2.13e-3)).toMatchObject({ ok: true, reading: 2.2e-3 });
  expect(readReading('950 µW', 'power', 2.13e-3)).toMatchObject({ ok: true, reading: 950e-6 });
  expect(readReading('3.1', 'typed', null)).toMatchObject({ ok: true, reading: 3.1 });
  expect(readReading('plenty', 'power', 2e-3).ok).toBe(false);
  expect(readReading('-1', 'typed', null).ok).toBe(false);
});

test('ten times the light is an octave, and the best sounds its own tone', () => {
  expect(toneOf(2, 2)).toBe(bestTone);
  expect(toneOf(0.2, 2)).toBeCloseTo(bestTone / 2, 6); // rounding of the logarithm
  expect(toneOf(0, 2)).toBe(110);
});

test('the target of a detuning is in the unit of the meter', () => {
  const step = {
    kind: 'detune',
    screw: { mirror: 'M1', axis: 'vertical' },
    sense: 1,
    target: 2.1e-4,
    fraction: 0.1,
  } as const;
  expect(stepSentence(step, 'power').doThis).toBe(
    'Turn M1 vertical onwards until the meter has fallen to 0.21 mW.',
  );
  expect(stepSentence(step, 'eye').doThis).not.toMatch(/0\.21/u);
});

test('the picture of the ridge has the peak in its middle and the doubt around the point', () => {
  const picture = ridgePicture(estimate);
  // 0.3 half-widths of the 1.5 to the edge
  expect(picture).toMatchObject({ x: 0.6, y: 0.5 });
  expect((picture?.halfY ?? 0) / (picture?.halfX ?? 1)).toBeCloseTo(2, 10);
  expect(ridgePicture({ ...estimate, ridge: null })).toBeNull();
  const move = (reading: number) => ({
    step: { kind: 'stand', why: 'start' } as const,
    answer: { outcome: 'did', standing: reading } as const,
    reading,
    estimate,
    remarks: [],
  });
  // a tenth is one of three decades down
  const [tenth, top] = traceOf([move(0.1), move(1)]);
  expect(tenth?.y).toBeCloseTo(2 / 3, 10);
  expect(top?.y).toBe(1);
});

test('the truth of a practice bench is told in shares and turns, its focus only where that costs something', () => {
  const offsets = [{ screw: { mirror: 'M1', axis: 'vertical' }, turns: 0.02 }] as const;
  const told = truthTexts({ share: 0.973, focus: 1, offsets }).join(' ');
  expect(told).toContain('97.3 %');
  expect(told).toContain('M1 vertical +0.02');
  expect(told).not.toContain('focus');
  expect(truthTexts({ share: 0.973, focus: 0.8, offsets }).join(' ')).toContain('80 %');
});
