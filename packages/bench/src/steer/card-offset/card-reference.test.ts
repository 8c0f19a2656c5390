import { readFileSync } from 'node:fs';
import { lightFromSrgb } from '@coreward/optics';
import { expect, test } from 'vitest';
import { cardScaleOf, onCard, readPixel, readRectangle } from './card-scale.ts';
import { cardSpot } from './card-spot.ts';

interface Reference {
  readonly homographies: readonly {
    readonly corners: readonly (readonly [number, number])[];
    readonly sides_m: readonly [number, number];
    readonly points: readonly (readonly [number, number])[];
    readonly carried_m: readonly (readonly [number, number])[];
  }[];
  readonly spots: readonly {
    readonly width: number;
    readonly height: number;
    readonly codes: readonly number[];
    readonly centre: readonly [number, number];
    readonly deviations: readonly [number, number];
  }[];
}
const file = `${import.meta.dirname}/../../../reference/card/card.json`;
const reference: Reference = JSON.parse(readFileSync(file, 'utf8'));
const point = ([x, y]: readonly [number, number]) => ({ x, y });

test.each(reference.homographies.map((one, i) => [i + 1, one] as const))(
  'rectangle %i from aslant: points lie on the card where NumPy’s singular vectors put them',
  (_, { corners, sides_m, points, carried_m }) => {
    const scale = cardScaleOf(corners.map(point), sides_m, 0, 'test');
    points.forEach((one, i) => {
      const there = onCard(scale, point(one));
      // both solve eight equations in doubles: 1e-12 of a card of some centimetres, and a margin for their condition
      expect(Math.hypot(there.x - carried_m[i]![0], there.y - carried_m[i]![1])).toBeLessThan(1e-12);
    });
  },
);

test.each(reference.spots.map((one, i) => [i + 1, one] as const))(
  'spot %i: its centre is that of a Gaussian fitted by SciPy',
  (_, { width, height, codes, centre, deviations }) => {
    const samples = Uint8Array.from(codes);
    const read = cardSpot({ width, height, channels: 1, samples, fullScale: 255, format: 'png' }, 'linear');
    if (read.kind !== 'spot') throw new Error(read.lack);
    const { spot } = read;
    // noise of a hundredth moves either fit by about 1/500 of a deviation; ours weighs the flanks more: five times that
    const allowed = 0.01 * deviations[0];
    expect(Math.abs(spot.x - centre[0])).toBeLessThan(allowed);
    expect(Math.abs(spot.y - centre[1])).toBeLessThan(allowed);
    // 1/e² radius of a Gaussian: two deviations (elementary), to a few hundredths under this noise
    expect(Math.abs(spot.ellipse.major / (2 * deviations[0]) - 1)).toBeLessThan(0.04);
  },
);

test('codes of sRGB stand for the light of IEC 61966-2-1: mid grey 188 is half, 128 is 0.2159, 10 is linear', () => {
  // tables of the encoding, four digits (from memory)
  expect(lightFromSrgb(188 / 255)).toBeCloseTo(0.5029, 4);
  expect(lightFromSrgb(128 / 255)).toBeCloseTo(0.2159, 4);
  expect(lightFromSrgb(10 / 255)).toBeCloseTo(10 / 255 / 12.92, 12);
});

test('a spot coded by IEC 61966-2-1 is as wide as its light, not as its codes', () => {
  const [size, deviation] = [96, 9];
  const samples = Uint8Array.from({ length: size * size }, (_, i) => {
    const [x, y] = [(i % size) - 47.5, Math.floor(i / size) - 47.5];
    const light = 0.7 * Math.exp(-(x * x + y * y) / (2 * deviation ** 2));
    // the standard's own encoding, constants from memory
    return Math.round(255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055));
  });
  const read = cardSpot({ width: size, height: size, channels: 1, samples, fullScale: 255, format: 'png' });
  if (read.kind !== 'spot') throw new Error(read.lack);
  // 1/e² radius: two deviations (elementary); the codes alone would look 1.5 times as wide
  expect(Math.abs(read.spot.ellipse.minor / (2 * deviation) - 1)).toBeLessThan(0.02);
  expect(read.spot.peak).toBeCloseTo(0.7, 1);
});

test.each([
  ['12.5 px/mm', 0.08e-3, 0.007],
  ['10px/mm', 0.1e-3, 0.007],
  ['0.1mm', 0.1e-3, 0.007],
  ['0.08 mm ± 1 %', 0.08e-3, 0.01],
  ['80 µm/px ± 2 µm', 0.08e-3, 0.025],
  ['8 px/mm ± 0.04', 0.125e-3, 0.005],
] as const)('a scale of %s', (text, pixel, doubt) => {
  const read = readPixel(text, 'test');
  expect(read.pixel).toBeCloseTo(pixel, 12);
  expect(read.uncertainty / read.pixel).toBeCloseTo(doubt, 9);
});

test.each(['12.5', 'px/mm', '-3 px/mm', '0 mm', '3 px/kg', '5 mW'])('%s is no scale', (text) => {
  expect(() => readPixel(text, 'test')).toThrow(/is no scale/u);
});

test('corners are taken in any order, and refused where they are none', () => {
  const one = readRectangle('0,0 400,0 400,300 0,300', '40 mm x 30 mm', 'test');
  const other = readRectangle('400 300; 0 0; 0 300; 400 0', '40 x 30 mm', 'test');
  for (const scale of [one, other]) {
    const { x, y } = onCard(scale, { x: 400, y: 0 });
    expect([x, y]).toEqual([expect.closeTo(20e-3, 12), expect.closeTo(15e-3, 12)]);
  }
  expect(() => readRectangle('0,0 1,0', '40 mm x 30 mm', 'test')).toThrow(/not four corners/u);
  expect(() => readRectangle('0,0 100,0 200,0 0,300', '40 mm x 30 mm', 'test')).toThrow(/not the corners/u);
  expect(() => readRectangle('0,0 400,0 400,300 0,300', '40 mm', 'test')).toThrow(/no rectangle/u);
});
