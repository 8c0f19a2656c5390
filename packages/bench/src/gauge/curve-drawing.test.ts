import { expect, test } from 'vitest';
import { drawCurve, thinned } from './curve-drawing.ts';

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
