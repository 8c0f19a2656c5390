import fc from 'fast-check';
import { expect, test } from 'vitest';
import { between, endOf, pinched, shifted, zoomed } from './time-stretch.ts';

const most = { from: 0, to: 100_000 };

test('what lies under the place of a zoom stays where it is', () => {
  expect(zoomed({ from: 20_000, to: 40_000 }, 2, 25_000, most)).toEqual({ from: 22_500, to: 32_500 });
  expect(zoomed({ from: 20_000, to: 40_000 }, 0.5, 30_000, most)).toEqual({ from: 10_000, to: 50_000 });
});

test('nothing leads beyond what there is, or below ten milliseconds', () => {
  expect(zoomed({ from: 20_000, to: 40_000 }, 0.001, 30_000, most)).toEqual(most);
  expect(zoomed({ from: 20_000, to: 40_000 }, 1e9, 30_000, most)).toEqual({ from: 29_995, to: 30_005 });
  expect(shifted({ from: 20_000, to: 40_000 }, 0.5, most)).toEqual({ from: 30_000, to: 50_000 });
  expect(shifted({ from: 20_000, to: 40_000 }, -9, most)).toEqual({ from: 0, to: 20_000 });
  expect(shifted({ from: 20_000, to: 40_000 }, 9, most)).toEqual({ from: 80_000, to: 100_000 });
  expect(endOf(most, 1_000)).toEqual({ from: 99_000, to: 100_000 });
  expect(endOf(most, 1e9)).toEqual(most);
  expect(between(30_000, 20_000, most)).toEqual({ from: 20_000, to: 30_000 });
  expect(between(30_000, 30_000, most)).toEqual({ from: 29_995, to: 30_005 });
});

test('what two fingers hold stays under them', () => {
  const place = fc.double({ min: 0.05, max: 0.95, noNaN: true });
  fc.assert(
    fc.property(place, place, place, place, (a, b, c, d) => {
      fc.pre(Math.abs(a - b) > 0.1 && Math.abs(c - d) > 0.1);
      const before = [Math.min(a, b), Math.max(a, b)] as const;
      const now = [Math.min(c, d), Math.max(c, d)] as const;
      const far = { from: -1e9, to: 1e9 };
      const start = { from: 20_000, to: 40_000 };
      const end = pinched(start, before, now, far);
      for (const finger of [0, 1] as const) {
        const held = start.from + before[finger] * 20_000;
        // sums of doubles of some 10⁵: some 10⁻¹¹
        expect(end.from + now[finger] * (end.to - end.from)).toBeCloseTo(held, 6);
      }
    }),
  );
});
