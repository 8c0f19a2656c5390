import fc from 'fast-check';
import { expect, test } from 'vitest';
import { OutOfRange } from '../out-of-range.ts';
import { assumedTime, assumedTimes, isVisible, mustNotRelyOnReaction } from './assumed-time.ts';

// TROS Laserstrahlung, part 2, 4.1; AS/NZS 60825.14; DGUV Information 203-042: read. 10 s: a proposal
test('10 s stand first for light that is seen, with 100 s beside it; reactions come last and say what they rely on', () => {
  const times = assumedTimes(532e-9);
  expect(times.map(({ exposureTime }) => exposureTime)).toEqual([10, 100, 2, 0.25]);
  expect(times.at(-1)!.wording).toContain('relies on an immediate reaction');
  expect(times[0]!.basis.evidence).toBe('proposal');
  expect(times[1]!.basis.evidence).toBe('read');
});

test('light that is not seen is assumed for 100 s, and below 400 nm for a day', () => {
  expect(assumedTimes(785e-9).map(({ exposureTime }) => exposureTime)).toEqual([100]);
  expect(assumedTimes(1550e-9).map(({ exposureTime }) => exposureTime)).toEqual([100]);
  expect(assumedTimes(375e-9).map(({ exposureTime }) => exposureTime)).toEqual([3e4]);
  expect(assumedTime('worst accident', 375e-9).exposureTime).toBe(3e4);
});

test('the words beside a number name the time it was computed for', () => {
  for (const nm of [350, 450, 650, 785, 1550]) {
    for (const { wording, exposureTime } of assumedTimes(nm * 1e-9)) {
      expect(wording.replace('30 000', '30000')).toContain(` ${exposureTime} s`);
    }
  }
});

test('a glance or a reaction outside 400 to 700 nm is refused, at the edges too', () => {
  for (const situation of ['glance', 'deliberate reaction'] as const) {
    for (const nm of [315, 399.999, 700.001, 785, 1064, 1550]) {
      expect(() => assumedTime(situation, nm * 1e-9)).toThrow(/triggers none/u);
    }
    for (const nm of [400, 532, 700]) {
      expect(assumedTime(situation, nm * 1e-9).exposureTime).toBeLessThanOrEqual(2);
    }
  }
});

test('a time somebody chose must not rely on a reaction to light that is not seen', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0.01, max: 9.99, noNaN: true }),
      fc.oneof(
        fc.double({ min: 315, max: 399.99, noNaN: true }),
        fc.double({ min: 700.01, max: 1e6, noNaN: true }),
      ),
      (time, nm) => {
        expect(() => mustNotRelyOnReaction(time, nm * 1e-9)).toThrow(OutOfRange);
      },
    ),
  );
  expect(() => mustNotRelyOnReaction(0.25, 375e-9)).toThrow('Assume 30 000 s.');
  expect(() => mustNotRelyOnReaction(0.25, 785e-9)).toThrow('Assume 100 s.');
  expect(() => mustNotRelyOnReaction(0.25, 532e-9)).not.toThrow();
  expect(() => mustNotRelyOnReaction(10, 785e-9)).not.toThrow();
});

test('785 nm glows faintly and counts as not seen', () => {
  expect([399.999, 400, 700, 700.001, 785].map((nm) => isVisible(nm * 1e-9))).toEqual([
    false,
    true,
    true,
    false,
    false,
  ]);
});

test('a wavelength outside what is covered has no time', () => {
  expect(() => assumedTime('beam', 300e-9)).toThrow(OutOfRange);
  expect(() => assumedTime('beam', Number.NaN)).toThrow(OutOfRange);
});
