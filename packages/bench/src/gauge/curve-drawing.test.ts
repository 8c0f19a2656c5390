import { expect, test } from 'vitest';
import { drawCurve, thinned } from './curve-drawing.ts';
import { gaugeNamed } from './gauge-table.ts';
import { measured } from './measured.ts';

const paper = { width: 640, height: 360, below: 90, margin: { left: 60, right: 12, top: 10, foot: 40 } };
const line = (count: number) => {
  const x = Array.from({ length: count }, (_, i) => (i / (count - 1)) * 10e-3);
  const fit = x.map((one) => 2 * one);
  // one reading in the middle stands out
  const readings = fit.map((one, i) => one + (i === count >> 1 ? 1e-3 : 0));
  return { title: 'a line', across: 'position (m)', up: 'reading', x, readings, fit };
};

test('metres are written as millimetres, at round numbers, left to right and bottom to top', () => {
  const drawn = drawCurve(line(11), paper);
  expect(drawn.across).toBe('position (mm)');
  expect(drawn.acrossTicks.map(({ text }) => text)).toEqual(['0', '2', '4', '6', '8', '10']);
  expect(drawn.fit[0]!.x).toBeLessThan(drawn.fit.at(-1)!.x);
  expect(drawn.fit[0]!.y).toBeGreaterThan(drawn.fit.at(-1)!.y);
  for (const { x, y } of [...drawn.readings, ...drawn.fit]) {
    expect(x).toBeGreaterThanOrEqual(drawn.frame.left);
    expect(x).toBeLessThanOrEqual(drawn.frame.right);
    expect(y).toBeGreaterThanOrEqual(drawn.frame.top);
    expect(y).toBeLessThanOrEqual(drawn.frame.bottom);
  }
});

test('what the fit leaves over is drawn on its own scale, above zero where the reading is higher', () => {
  const { residuals, zero, residualReach } = drawCurve(line(11), paper);
  expect(residuals[5]!.y).toBeLessThan(zero);
  expect(residuals[0]!.y).toBeCloseTo(zero, 9);
  expect(residualReach).toBe('0.001');
});

test('a line through two readings leaves nothing over, though their difference is no round binary number', () => {
  const [x, readings] = [
    [1, 6],
    [4.5e-3, 22e-3],
  ];
  const fit = readings.map((one, i) => one * (1 + i * 2 ** -52)); // one unit in the last place of a double
  const drawn = drawCurve(
    { title: 'two', across: 'distance (m)', up: 'diameter (m)', x, readings, fit },
    paper,
  );
  expect(drawn.residualReach).toBe('0 mm');
  expect(drawn.residuals.map(({ y }) => y)).toEqual([drawn.zero, drawn.zero]);
});

test('ten thousand readings are thinned out, and the one that stands out stays', () => {
  const thin = thinned(line(10_000));
  expect(thin.x.length).toBeLessThanOrEqual(1000);
  expect(Math.max(...thin.readings.map((reading, i) => reading - thin.fit[i]!))).toBeCloseTo(1e-3, 12);
  expect(thin.x[0]).toBe(0);
  expect(thin.x.at(-1)).toBe(10e-3);
  expect(thinned(line(500))).toEqual(line(500));
});

test('readings that are all the same are drawn, and so is a single one', () => {
  const flat = { ...line(3), readings: [1, 1, 1], fit: [1, 1, 1] };
  for (const { y } of drawCurve(flat, paper).readings) expect(Number.isFinite(y)).toBe(true);
  const one = { ...line(3), x: [1], readings: [1], fit: [1] };
  expect(Number.isFinite(drawCurve(one, paper).readings[0]!.x)).toBe(true);
});

test.each([
  ['power (mW)', 'reading (mW)', 1],
  // a hundredth of the figures above: people write it in the smaller unit
  ['power (mW)', 'reading (µW)', 0.01],
  ['voltage (V)', 'reading (mV)', 0.1],
  ['current (µA)', 'reading (µA)', 1],
  ['signal (counts)', 'reading (counts)', 1],
  ['signal', 'reading', 1],
])('a detector read as %s is drawn as %s', (heading, label, factor) => {
  const powers = [0.003, 0.012, 0.065, 0.29, 0.86, 1.71, 2.55, 3.12, 3.36, 3.41, 3.42];
  const rows = powers.map((power, i) => `${5 + 0.2 * i},${power * factor}`).join('\n');
  const gauge = gaugeNamed('knife-edge')!;
  const found = measured(gauge, { settings: {}, text: `position (mm),${heading}\n${rows}\n` }, null, 'scan');
  const drawn = found.kind === 'measured' ? drawCurve(found.curves[0]!, paper) : null;
  expect(drawn?.up).toBe(label);
  expect(drawn?.residualReach).toContain(label === 'reading' ? '' : label.slice(9, -1).replace('counts', ''));
});

test('decibels became shares, which have no unit', () => {
  const rows = [-40, -25, -18, -11, -6, -3, -1.3, -0.4, -0.1, 0, 0].map((one, i) => `${5 + 0.2 * i},${one}`);
  const text = `position (mm),power (dB)\n${rows.join('\n')}\n`;
  const found = measured(gaugeNamed('knife-edge')!, { settings: {}, text }, null, 'scan');
  expect(found.kind === 'measured' ? found.curves[0]?.up : null).toBe('reading');
});
