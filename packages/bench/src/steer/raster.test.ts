import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { planRaster, type RasterFacts, rasterPath, visibleRadius } from './raster.ts';

const f = 8e-3;
const modeRadius = 2e-6;
const angleTolerated = modeRadius / f;
const offsetTolerated = (532e-9 * f) / (Math.PI * modeRadius);
const tiltPerTurn = 7.9e-3;

/** Source: computed with NumPy, 20 000 draws each, 532 nm, w 2 µm, f 8 mm, 7.9 mrad a turn; printed as here. */
const table = [
  { error: 0.3e-3, apart: 0.5, margin: 40, lines: 7, half: 0.13, hits: 0.997 },
  { error: 0.5e-3, apart: 0.5, margin: 40, lines: 11, half: 0.22, hits: 0.991 },
  { error: 0.5e-3, apart: 1, margin: 40, lines: 6, half: 0.11, hits: 0.995 },
  { error: 0.5e-3, apart: 0.5, margin: 30, lines: 12, half: 0.22, hits: 0.985 },
];

const factsOf = (error: number, apart: number, margin: number): RasterFacts => ({
  angleTolerated,
  angleLost: (Math.SQRT2 * error) / apart,
  seen: 10 ** (-margin / 10),
  horizontalTurn: 2 * tiltPerTurn,
  verticalTurn: Math.SQRT2 * tiltPerTurn,
  updateTime: 0.25,
});

for (const { error, apart, margin, lines, half, hits } of table) {
  const name = `spots read to ${error * 1e3} mm on cards ${apart} m apart, ${margin} dB`;
  test(`${name}: ${lines} lines of ${half} turn either side`, () => {
    const raster = planRaster(factsOf(error, apart, margin));
    expect(raster.lines).toBe(lines);
    // printed to hundredths of a turn
    expect(Math.abs(raster.halfLength - half)).toBeLessThan(0.0051);
  });
  test(`${name}: light is found ${hits * 100} times in a hundred`, () => {
    const facts = factsOf(error, apart, margin);
    const raster = planRaster(facts);
    const random = seededUniform(5);
    const draws = 20_000;
    let found = 0;
    for (let i = 0; i < draws; i++) {
      const [onNear, onFar] = [0, 1].map(() => [0, 1].map(() => error * normalFrom(random)));
      const [h, v] = [0, 1].map((axis) => (onNear![axis]! - onFar![axis]!) / apart);
      const offsetShare = Math.hypot(onNear![0]!, onNear![1]!) / offsetTolerated;
      const radius = visibleRadius(angleTolerated, facts.seen, offsetShare);
      let vertical = (-(raster.lines - 1) / 2) * raster.step;
      for (let line = 0; line < raster.lines; line++) {
        const away = v! - vertical * facts.verticalTurn;
        const along = Math.max(0, Math.abs(h!) - raster.halfLength * facts.horizontalTurn);
        if (Math.hypot(away, along) < radius) {
          found += 1;
          break;
        }
        // a hand's step: a tenth, and up to 0.015 turn
        const adds = Math.min(0.015, Math.max(0.003, 0.4 * raster.step));
        vertical += raster.step * (1 + 0.1 * normalFrom(random)) + adds * normalFrom(random);
      }
    }
    // 20 000 draws leave 0.1 % of a hit rate near 99 %, in either; twice that of both, and their last digit
    expect(Math.abs(found / draws - hits)).toBeLessThan(0.0035);
  });
}

test('two readings of a quarter of a second fall inside the light at 0.13 turn a second', () => {
  // printed beside the table above, for its first row
  expect(planRaster(factsOf(0.3e-3, 0.5, 40)).fastest).toBeCloseTo(0.13, 2);
});

test('a raster ends where it began, and passes every line in turn', () => {
  for (const boxes of [1, 2] as const) {
    for (const [error, apart] of [
      [0.3e-3, 0.5],
      [0.5e-3, 1],
    ] as const) {
      const path = rasterPath(planRaster(factsOf(error, apart, 40), boxes));
      const [h, v] = path.reduce(
        ([h, v], move) =>
          move.do === 'line'
            ? [h + move.horizontal, v + move.stepFirst]
            : [h + move.horizontal, v + move.vertical],
        [0, 0],
      );
      expect(h).toBeCloseTo(0, 12);
      expect(v).toBeCloseTo(0, 12);
    }
  }
});

test('with the offset lost, too, nothing is seen from anywhere', () => {
  expect(visibleRadius(angleTolerated, 1e-4, 3.1)).toBe(0);
  expect(visibleRadius(angleTolerated, 1e-4, 3)).toBeGreaterThan(0);
});
