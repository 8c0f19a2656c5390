import { expect, test } from 'vitest';
import { handLoss } from '../forecast/hand-loss.ts';
import { inventedForecast } from './invented-forecast.ts';
import { handText, toleranceSection, turnsText } from './tolerance-section.ts';

test('a turn of a screw is told as an angle of its head, too', () => {
  expect(turnsText(0.031)).toBe('0.031 turns (11°)'); // 0.031 · 360° = 11.2°
  expect(turnsText(1.5)).toBe('1.5 turns');
  expect(turnsText(null)).toBe('never');
});

test('mounts are fine enough up to 3 % lost by the finest turn of a hand', () => {
  const loss = (share: number) => ({ share, of: 'the light in LP01' }) as const;
  expect(handText(loss(0.03), 'M2')).toBe(
    'The finest turn of a hand, 1/400 of a turn at a screw of M2, costs 3 % of the light in LP01: these mounts are fine enough.',
  );
  expect(handText(loss(0.0301), 'M2')).toContain('too coarse to stay on the peak');
  expect(handText(loss(1e-9), 'M2')).toContain('costs under 0.1 % of');
  expect(handText(null, 'M2')).toBeNull();
});

test('where a fibre has many modes, the mounts are judged by all guided light', () => {
  const { fibre, tolerances } = inventedForecast;
  const many = { fibre: { ...fibre, vNumber: { value: 15, low: 14, high: 16 } }, tolerances };
  const few = { fibre: { ...fibre, vNumber: { value: 14.9, low: 14, high: 16 } }, tolerances };
  expect(handLoss(many)).toEqual({ share: 0.0012, of: 'the guided light' });
  expect(handLoss(few)).toEqual({ share: 0.0066, of: 'the light in LP01' });
  expect(handLoss({ ...few, fibre: { ...fibre, lpModes: 1 } })?.of).toBe('the light');
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
