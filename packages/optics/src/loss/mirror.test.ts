import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import { OutOfRange } from '../out-of-range.ts';
import { benchMirror, benchMirrors, type Metal, metalIndex, metalReflectance } from './mirror.ts';

const films: readonly { id: string; metal: Metal }[] = [
  { id: 'mirror-Al-632.8', metal: 'aluminium' },
  { id: 'mirror-Al-850', metal: 'aluminium' },
  { id: 'mirror-Ag-632.8', metal: 'silver' },
  { id: 'mirror-Au-532', metal: 'gold' },
  { id: 'mirror-Au-632.8', metal: 'gold' },
];
for (const { id, metal } of films) {
  const row = lossRow(id);
  test(row.title, () => {
    const { wavelength_m, n, k } = row.inputs;
    expect(metalIndex(metal, wavelength_m!).index).toEqual({ n, k });
    const { s, p } = metalReflectance(metal, wavelength_m!, Math.PI / 4);
    expect(
      misses(row, {
        reflectanceNormal: metalReflectance(metal, wavelength_m!, 0).s,
        reflectanceS45: s,
        reflectanceP45: p,
      }),
    ).toEqual([]);
  });
}

const practice = lossRow('mirror-practice');
test(practice.title, () => {
  expect(
    misses(practice, {
      reflectance: benchMirrors.map(({ reflectance }) => reflectance),
      low: benchMirrors.map(({ low }) => low),
      high: benchMirrors.map(({ high }) => high),
    }),
  ).toEqual([]);
});

test('a bench mirror reflects less than a fresh film of its metal, and lies within its own interval', () => {
  expect(benchMirror('protected aluminium', 633e-9).reflectance!).toBeLessThan(
    metalReflectance('aluminium', 633e-9, 0).s,
  );
  expect(benchMirror('protected silver', 633e-9).reflectance!).toBeLessThan(
    metalReflectance('silver', 633e-9, 0).s,
  );
  for (const { reflectance, low, high } of benchMirrors) {
    expect(low).toBeLessThan(high);
    if (reflectance !== null) expect(low < reflectance && reflectance < high).toBe(true);
  }
});

test('between the rows of the table nothing is known', () => {
  expect(metalIndex('gold', 533e-9).wavelength).toBe(532e-9);
  expect(() => metalIndex('gold', 533.1e-9)).toThrow(OutOfRange);
  expect(() => metalIndex('silver', 532e-9)).toThrow(/632\.8 nm/);
  expect(() => metalReflectance('aluminium', 740e-9, 0)).toThrow(OutOfRange);
});

test('gold is no bench mirror in the green; the edges of a band belong to it, however they were computed', () => {
  expect(() => benchMirror('protected gold', 532e-9)).toThrow(OutOfRange);
  expect(benchMirror('protected gold', 800 * 1e-9).reflectance).toBe(0.97);
  expect(() => benchMirror('protected gold', 799.9e-9)).toThrow(OutOfRange);
  expect(benchMirror('protected silver', 1100 * 1e-9).reflectance).toBe(0.965);
  expect(benchMirror('dielectric out of band', 532e-9).reflectance).toBeNull();
});
