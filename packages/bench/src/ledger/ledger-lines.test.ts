import { expect, test } from 'vitest';
import { inventedForecast } from './invented-forecast.ts';
import { ledgerLines } from './ledger-lines.ts';
import { ledgerSection, notGuidedText } from './ledger-section.ts';

// Expected texts are worked out by hand from the invented numbers: 10·log₁₀(0.8) = −0.97, 10·log₁₀(1.25) = +0.97.

const stretches = ledgerLines(inventedForecast);
const lines = stretches.flatMap((stretch) => stretch.lines);
const line = (id: string) => lines.find((one) => one.id === id);

test('losses stand in the order in which light meets them, stretch by stretch', () => {
  expect(stretches.map(({ group }) => group)).toEqual(['path', 'lens', 'overlap', 'fibre']);
  expect(lines.map(({ id }) => id)).toEqual(inventedForecast.ledger.map(({ id }) => id));
});

test('a loss shows its decibels, its share, its range and the power behind it', () => {
  expect(line('mirror-M1')).toMatchObject({
    loss: '−0.97 dB',
    passes: '80 %',
    interval: '75 to 85 %',
    power: '9.2 mW',
  });
});

test('the power runs down the staircase', () => {
  expect(lines.map(({ power }) => power)).toEqual([
    '9.2 mW',
    '9.2 mW',
    '9.2 mW',
    '2.39 mW',
    '2.99 mW',
    '2.99 mW',
  ]);
  expect(lines.at(-1)?.left).toBeCloseTo(0.26, 12);
});

test('an overlap that gives back what an earlier one took shows as a gain', () => {
  expect(line('focus')).toMatchObject({ loss: '+0.97 dB', passes: '125 %' });
});

test('only what surely costs nothing counts as costing nothing', () => {
  expect(line('clip-M1')?.costsNothing).toBe(true);
  expect(line('bend-1')).toMatchObject({ loss: '0 dB', interval: '90 to 100 %', costsNothing: false });
});

test('the table leaves out what costs nothing, and names it below', () => {
  const [table, free] = ledgerSection(inventedForecast).blocks;
  expect(JSON.stringify(table)).not.toContain('clipped at M1');
  expect(JSON.stringify(table)).not.toContain('Through the lens');
  expect(free).toEqual({
    kind: 'text',
    text: 'These cost nothing here: clipped at M1, clipped at the lens.',
  });
});

test('the last row is the forecast itself', () => {
  const [table] = ledgerSection(inventedForecast).blocks;
  expect(table?.kind === 'table' && table.rows.at(-1)).toEqual({
    kind: 'cells',
    cells: ['all together', '−7.4 dB', '18 %', '14 to 22 %', '2.1 mW', { bar: 0.18 }],
  });
});

test('light that is not guided is accounted for, but for traces', () => {
  expect(notGuidedText(inventedForecast)).toBe(
    'Of the laser’s light 27 % sets out in the core; 20 % is lost before the fibre, lens included; ' +
      '3 % is thrown back by the fibre’s end; 50 % strays into the cladding.',
  );
});
