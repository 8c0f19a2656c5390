import { expect, test } from 'vitest';
import { cardDrawing, rasterDrawing } from './card-drawing.ts';
import { answerEntry, begunEntry, steerThatStands } from './kept-steer.ts';
import { planRaster } from './raster.ts';
import { readDistance, readOffset } from './read-offset.ts';
import { ordinaryMeter } from './steer-meter.ts';
import type { SteerAnswer } from './step.ts';

const cards = { near: 0.05, far: 0.7, readingError: 0.3e-3 };
const meter = { name: 'a photodiode', seen: 3e-5, updateTime: 0.5 };
const begun = { session: 'a', cards, version: null, meter: ordinaryMeter, practice: null };
const entry = (id: number, kind: string, data: unknown) => ({
  id: `e${id}`,
  time: `2026-01-01T00:00:${String(id).padStart(2, '0')}Z`,
  kind,
  data,
});
const went: SteerAnswer = { outcome: 'went', to: 'left' };
const read: SteerAnswer = {
  outcome: 'read',
  offsets: { near: { x: 1e-3, y: -2e-3 }, far: { x: 0, y: 0.5e-3 } },
};

test('the book gives back cards, practice and answers as they were entered; the newest steer counts', () => {
  const entries = [
    entry(1, 'steer', begunEntry({ ...begun, practice: 7 })),
    entry(2, 'steer', answerEntry('a', 0, went, 'went')),
    entry(3, 'steer', begunEntry({ ...begun, session: 'b', version: 3, meter })),
    entry(4, 'steer', answerEntry('b', 0, went, 'went')),
    entry(5, 'steer', answerEntry('b', 1, read, 'read')),
    entry(6, 'steer', answerEntry('b', 1, went, 'written by another page, too late')),
  ].toReversed();
  expect(steerThatStands(entries)).toEqual({
    session: 'b',
    cards,
    version: 3,
    meter,
    practice: null,
    answers: [went, read],
    lastEntry: 'e5',
  });
});

test('a steer from before its launch and meter were kept goes on with the newest launch and an ordinary meter', () => {
  const { version: _, meter: __, ...old } = begunEntry(begun);
  expect(steerThatStands([entry(1, 'steer', old)])).toMatchObject({ version: null, meter: ordinaryMeter });
  const nonsense = { ...old, meter: { seen: 0, updateTime: -1 } };
  expect(steerThatStands([entry(1, 'steer', nonsense)])?.meter).toEqual(ordinaryMeter);
});

test('offsets that a camera read keep how well it read them', () => {
  const byCamera: SteerAnswer = { ...read, readingError: 0.03e-3 };
  const entries = [
    entry(1, 'steer', begunEntry(begun)),
    entry(2, 'steer', answerEntry('a', 0, byCamera, 'read')),
  ].toReversed();
  expect(steerThatStands(entries)?.answers).toEqual([byCamera]);
});

test('an answer that was withdrawn no longer counts, and what is none never does', () => {
  const entries = [
    entry(1, 'steer', begunEntry(begun)),
    entry(2, 'steer', answerEntry('a', 0, went, 'went')),
    entry(3, 'withdrawn', { entry: 'e2' }),
    entry(4, 'steer', { session: 'a', does: 'answer', number: 0, answer: '{"outcome":"read","offsets":3}' }),
    entry(5, 'steer', { session: 'a', does: 'answer', number: 0, answer: '{' }),
  ].toReversed();
  expect(steerThatStands(entries)).toMatchObject({ answers: [], lastEntry: null });
  expect(steerThatStands([])).toBeNull();
});

test('a bare number beside a card is millimetres; a unit may stand', () => {
  expect(readOffset('-1.2')).toEqual({ ok: true, value: -1.2e-3 });
  expect(readOffset('−1.2 mm')).toMatchObject({ ok: true, value: -1.2e-3 });
  expect(readOffset('300 µm')).toMatchObject({ ok: true, value: 3e-4 });
  expect(readOffset('left')).toMatchObject({ ok: false });
  expect(readOffset('1 m')).toMatchObject({ ok: false });
  expect(readDistance('50', 0.01, 1)).toMatchObject({ ok: true, value: 0.05 });
  expect(readDistance('5', 0.01, 1)).toMatchObject({ ok: false });
});

test('a card is drawn to a round scale, right to the right and up upwards', () => {
  // 4 lines of 1 mm hold 1.2 · 3 mm
  const drawn = cardDrawing({ x: 3e-3, y: 1e-3 });
  expect(drawn.gridText).toBe('1 mm');
  expect(drawn.forward).toEqual({ x: 50 + 3 * 12.5, y: 50 - 12.5 });
  const far = cardDrawing({ x: -1, y: 0 });
  expect(far.forward.x).toBe(4);
});

test('a raster is drawn line by line, to and fro', () => {
  const facts = {
    angleTolerated: 0.25e-3,
    angleLost: 0.85e-3,
    seen: 1e-4,
    horizontalTurn: 16e-3,
    verticalTurn: 11e-3,
    updateTime: 0.25,
  };
  const { lines } = rasterDrawing(planRaster(facts));
  expect(lines).toHaveLength(7);
  expect(lines[0]).toMatchObject({ x1: 8, x2: 92, y: 92 });
  expect(lines[1]).toMatchObject({ x1: 92, x2: 8 });
  expect(lines[6]!.y).toBeCloseTo(8, 9);
});
