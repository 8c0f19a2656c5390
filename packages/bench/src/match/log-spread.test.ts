import fc from 'fast-check';
import { expect, test } from 'vitest';
import { intervalAbout, spreadOfRatios, together } from './log-spread.ts';

const ratio = fc.double({ min: 0.05, max: 20, noNaN: true });

test('a factor that loses at both ends of a doubt stands at its upper end', () => {
  const interval = intervalAbout(0.8, spreadOfRatios(0.5, 0.9));
  expect(interval.low).toBeCloseTo(0.4, 12);
  expect(interval.high).toBeCloseTo(0.8, 12);
});

test('two equal doubts are √2 as wide as one (JCGM 100:2008, 5.1.2, from memory)', () => {
  const one = spreadOfRatios(0.9, 1.1);
  const two = together([one, one]);
  expect(two.down / one.down).toBeCloseTo(Math.SQRT2, 12);
  expect(two.up / one.up).toBeCloseTo(Math.SQRT2, 12);
});

test('what can only let less light through never makes more of it', () => {
  const noMore = fc.array(fc.double({ min: 0.01, max: 1, noNaN: true }), { maxLength: 6 });
  fc.assert(
    fc.property(noMore, (ratios) => {
      const { low, high } = intervalAbout(0.7, together(ratios.map((one) => spreadOfRatios(one))));
      expect(high).toBe(0.7);
      expect(low).toBeLessThanOrEqual(0.7);
    }),
  );
});

test('doubts together reach no further than one after the other', () => {
  fc.assert(
    fc.property(fc.array(ratio, { minLength: 1, maxLength: 6 }), (ratios) => {
      const { low, high } = intervalAbout(1, together(ratios.map((one) => spreadOfRatios(one))));
      const least = ratios.reduce((all, one) => all * Math.min(1, one), 1);
      const most = ratios.reduce((all, one) => all * Math.max(1, one), 1);
      // rounding of a few logarithms
      expect(low).toBeGreaterThanOrEqual(least * (1 - 1e-12));
      expect(high).toBeLessThanOrEqual(most * (1 + 1e-12));
    }),
  );
});

test('an end that lets nothing through reaches down to nothing', () => {
  expect(intervalAbout(0.3, spreadOfRatios(0, 1)).low).toBe(0);
});
