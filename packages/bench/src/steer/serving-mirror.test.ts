import { expect, test } from 'vitest';
import { growsTwice, servingMirror } from './serving-mirror.ts';

test('M1 serves the card before the lens and M2 the one behind M1, and cards at the mirrors need one pass', () => {
  const mirrors = { near: 0.15, far: 0.45 };
  // n = 0.1, s = 0.2, L = 0.3: 0.02 / (0.5 · 0.4)
  const usual = servingMirror(mirrors, { near: 0.05, far: 0.65 });
  expect(usual).toMatchObject({ nearCard: 'M1', farCard: 'M2' });
  expect(usual.errorRatio).toBeCloseTo(0.1, 12);
  expect(servingMirror(mirrors, { near: 0.15, far: 0.65 }).errorRatio).toBe(0);
});

/** Two cards beyond M2. Source: computed with NumPy, printed: L 0.30, cards 0.15 and 1.15 m from M2: 0.42; 0.30 and 0.45: 0.83. */
for (const [a, b, printed] of [
  [0.15, 1.15, 0.42],
  [0.3, 0.45, 0.83],
] as const) {
  test(`cards ${a} and ${b} m beyond M2 leave ${printed} a turn: the nearer one is M1's`, () => {
    const mirrors = { near: 0, far: 0.3 };
    const { nearCard, errorRatio } = servingMirror(mirrors, { near: -b, far: -a });
    expect(nearCard).toBe('M2');
    expect(Math.abs(errorRatio - printed)).toBeLessThan(0.005);
  });
}

test('turned in turn the error falls by the ratio; swapped it grows by its inverse', () => {
  const [near, far] = [0.15, 0.45];
  const at = { near: 0.05, far: 0.65 };
  const { errorRatio } = servingMirror({ near, far }, at);
  // X and θ followed pass by pass, the long way
  const after = (first: [number, number], second: [number, number]) => {
    let [offset, angle] = [1e-3, 2e-3];
    const size = () => Math.abs(offset - angle * second[1]);
    const pass = ([mirror, card]: [number, number]) => {
      const turn = -(offset - angle * card) / (mirror - card);
      offset += mirror * turn;
      angle += turn;
    };
    pass(first);
    const before = size();
    pass(second);
    pass(first);
    return size() / before;
  };
  expect(after([far, at.near], [near, at.far])).toBeCloseTo(errorRatio, 9);
  expect(after([near, at.near], [far, at.far])).toBeCloseTo(1 / errorRatio, 9);
});

test('cards at one place tell nothing, and it is said', () => {
  expect(() => servingMirror({ near: 0.1, far: 0.4 }, { near: 0.6, far: 0.6 })).toThrow('cannot be told');
});

test('an offset that grows twice running is noticed, its doubt is not', () => {
  expect(growsTwice([1e-3, 2e-3, 4e-3], 0.3e-3)).toBe(true);
  expect(growsTwice([9e-3, 1e-3, -2e-3, 4e-3], 0.3e-3)).toBe(true);
  expect(growsTwice([1e-3, 1.2e-3, 1.4e-3], 0.3e-3)).toBe(false);
  expect(growsTwice([1e-3, 4e-3, 2e-3], 0.3e-3)).toBe(false);
  expect(growsTwice([1e-3, 4e-3], 0.3e-3)).toBe(false);
  // once is chance, whichever time it was
  expect(growsTwice([1e-3, 1.2e-3, 2e-3], 0.3e-3)).toBe(false);
  expect(growsTwice([1e-3, 2e-3, 2.2e-3], 0.3e-3)).toBe(false);
});
