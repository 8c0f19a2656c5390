import { expect, test } from 'vitest';
import type { CameraReading } from './camera-meter.ts';
import { cameraWords } from './camera-words.ts';

const reading: CameraReading = {
  kind: 'light',
  value: 412.31,
  rounding: 0.5,
  floor: null,
  topCode: 0.8,
  full: 0,
  lost: 0.0003,
};

test('a reading says its value and what scatters it: the readings themselves, or rounding where they stand still', () => {
  expect(cameraWords(reading, 4.1, true)).toMatchObject({ value: '412.3', noise: '0.99 %', remarks: [] });
  expect(cameraWords(reading, 0, true).noise).toBe('0.12 %');
  expect(cameraWords(reading, null, true).noise).toBeNull();
  expect(cameraWords(reading, 4.1, false).remarks[0]).toMatch(/dark frame/u);
});

test('full pixels are refused with what mends them, and no figure is shown', () => {
  const told = cameraWords({ ...reading, kind: 'clipped', full: 3 }, 4.1, true);
  expect(told.value).toBeNull();
  expect(told.refused?.mend).toMatch(/Shorten the exposure or dim the light/u);
});

test('a faint spot is read, with a word on what it may lack', () => {
  expect(cameraWords({ ...reading, lost: 0.03 }, 1, true).remarks.join()).toMatch(/3 %/u);
});
