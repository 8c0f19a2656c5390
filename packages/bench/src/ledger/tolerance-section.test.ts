import { expect, test } from 'vitest';
import { inventedForecast } from './invented-forecast.ts';
import { handText, toleranceSection, turnsText } from './tolerance-section.ts';

test('a turn of a screw is told as an angle of its head, too', () => {
  expect(turnsText(0.031)).toBe('0.031 turns (11°)'); // 0.031 · 360° = 11.2°
  expect(turnsText(1.5)).toBe('1.5 turns');
  expect(turnsText(null)).toBe('never');
});

test('mounts are fine enough up to 3 % lost by the finest turn of a hand', () => {
  expect(handText(0.03, 'M2')).toContain('These mounts are fine enough.');
  expect(handText(0.0301, 'M2')).toContain('too coarse');
  expect(handText(null, 'M2')).toBeNull();
});

test('mounts too coarse get ways to make them finer', () => {
  expect(handText(0.2, 'M2')).toMatch(/longer arm.*finer thread.*hex key.*shorter focal length/u);
});

test('all guided light and LP01 stand beside each other', () => {
  const table = toleranceSection(inventedForecast).blocks.find((block) => block.kind === 'table');
  expect(table?.rows.map((row) => row.kind === 'cells' && row.cells)).toEqual([
    ['spot moved sideways', '3.7 µm', '1.4 µm'],
    ['light tilted', '92 mrad', '31 mrad'],
    ['fibre moved along the light', 'never', '54 µm'],
    ['horizontal screw of M1', '0.05 turns (18°)', '0.02 turns (7.2°)'],
  ]);
});

test('with one mode there is one column', () => {
  const single = { ...inventedForecast, fibre: { ...inventedForecast.fibre, lpModes: 1 } };
  const table = toleranceSection(single).blocks.find((block) => block.kind === 'table');
  expect(table?.columns).toHaveLength(2);
});

test('the mirror that is named is the last one with screws', () => {
  expect(JSON.stringify(toleranceSection(inventedForecast))).toContain('a screw of M2');
});
