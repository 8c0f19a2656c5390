import { expect, test } from 'vitest';
import { onCard } from './card-scale.ts';
import type { CardSpot } from './card-spot.ts';
import { markAfterKey, markAt } from './marks.ts';
import { meanSpot } from './mean-spot.ts';
import { firstMarks, scaleAsked } from './scale-asked.ts';

const marks = [
  { x: 100, y: 400 },
  { x: 400, y: 0 },
];

test('two marks on a ruler make a scale: 500 pixels, by Pythagoras, are 40 mm', () => {
  const read = scaleAsked({ by: 'ruler', marks, length: '40 mm' });
  expect(read.ok && read.scale).toMatchObject({ kind: 'pixel', pixel: expect.closeTo(80e-6, 12) });
  // 0.7 % of the ruler and 1.5 of 500 pixels, in quadrature
  const doubt = read.ok && read.scale.kind === 'pixel' ? read.scale.uncertainty / read.scale.pixel : 0;
  expect(doubt).toBeCloseTo(Math.hypot(0.007, 0.003), 6);
  // a length with its own doubt counts instead: 1 % of 40 mm
  const stated = scaleAsked({ by: 'ruler', marks, length: '40 mm ± 1 %' });
  const own = stated.ok && stated.scale.kind === 'pixel' ? stated.scale.uncertainty / stated.scale.pixel : 0;
  expect(own).toBeCloseTo(Math.hypot(0.01, 0.003), 6);
});

test('four marks are the corners of a rectangle, a typed scale is read as it stands', () => {
  const corners = firstMarks('rectangle', { width: 640, height: 480 });
  const read = scaleAsked({ by: 'rectangle', marks: corners, length: '40 mm x 30 mm' });
  if (!read.ok) throw new Error(read.why);
  const [left, right] = [onCard(read.scale, corners[0]!), onCard(read.scale, corners[1]!)];
  // the corners of an upright rectangle are its sides apart; y is up on the card
  expect(right.x - left.x).toBeCloseTo(40e-3, 9);
  expect(onCard(read.scale, corners[2]!).y - right.y).toBeCloseTo(-30e-3, 9);
  expect(scaleAsked({ by: 'typed', marks: [], length: '12.5 px/mm' })).toMatchObject({
    ok: true,
    scale: { pixel: expect.closeTo(80e-6, 12) },
  });
});

test.each([
  ['ruler', marks, '', /no length between two marks/u],
  ['ruler', marks, '4 W', /no length between two marks/u],
  ['ruler', [marks[0]!, { x: 101, y: 400 }], '40 mm', /in one place/u],
  ['rectangle', [...marks, ...marks], '40 mm x 30 mm', /corners/u],
  ['typed', [], '12', /no scale/u],
] as const)('%s %j `%s` is refused', (by, at, length, why) => {
  expect(scaleAsked({ by, marks: at, length })).toEqual({ ok: false, why: expect.stringMatching(why) });
});

test('a mark is where it is put, to a pixel, and moves by keys within the picture', () => {
  const size = { width: 640, height: 480 };
  expect(markAt({ x: 0.25, y: 0.5 }, size)).toEqual({ x: 160, y: 240 });
  expect(markAt({ x: 1.2, y: -1 }, size)).toEqual({ x: 639, y: 0 });
  expect(markAfterKey({ x: 10, y: 10 }, 'left', 'fine', size)).toEqual({ x: 9, y: 10 });
  expect(markAfterKey({ x: 10, y: 10 }, 'up', 'coarse', size)).toEqual({ x: 10, y: 0 });
});

const spot = (x: number, y: number): CardSpot => ({
  x,
  y,
  ellipse: { major: 20, minor: 20, azimuth: 0 },
  square: { xx: 100, yy: 100, xy: 0 },
  peak: 0.5,
  centre: { speckle: 0.02, noise: 0.01, freedom: 10 },
  width: 640,
  height: 480,
});

test('a spot that wanders is where its mean is, known to its scatter over the root of the pictures', () => {
  // ±2 px along x: an unbiased deviation of 2·√(4/3) along x, none along y; rms of both axes
  const { spot: mean, scatter } = meanSpot([spot(98, 50), spot(102, 50), spot(98, 50), spot(102, 50)]);
  expect([mean.x, mean.y]).toEqual([100, 50]);
  expect(scatter).toBeCloseTo(Math.sqrt((16 / 3 + 0) / 2), 9);
  // in deviations of the spot, ten pixels
  expect(mean.centre.noise).toBeCloseTo(scatter / 10 / 2, 9);
  expect(mean.centre.speckle).toBe(0.02);
});

test('speckle that stands still is not averaged out', () => {
  const { spot: mean, scatter } = meanSpot([spot(98, 50), spot(98, 50), spot(98, 50), spot(98, 50)]);
  expect(scatter).toBe(0);
  expect(mean.centre).toEqual({ speckle: 0.02, noise: 0.005, freedom: 10 });
});
