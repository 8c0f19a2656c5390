import { expect, test } from 'vitest';
import { emptyWindow, type ReadingWindow, shownNow, withHeard } from './reading-window.ts';

/** A meter that shows one value for a second, from `t` (ms) on, ten readings a second. */
const heard = (window: ReadingWindow, t: number, value: number): ReadingWindow =>
  Array.from({ length: 10 }, (_, i) => ({ t: t + 100 * i, value, saturated: false })).reduce(
    withHeard,
    window,
  );

test('when the clock is set back, what is shown is what is read now', () => {
  const before = heard(emptyWindow, 3_600_000, 0.2);
  const after = heard(before, 0, 0.7);
  expect(shownNow(after, null, 0)?.value).toBe(0.7);
  expect(after.moments.every(({ t }) => t < 1_000)).toBe(true);
});

test('readings a little out of turn, as a network may bring them, begin nothing anew', () => {
  const before = heard(emptyWindow, 0, 0.2);
  const late = withHeard(before, { t: 850, value: 0.7, saturated: false });
  expect(late.moments).toEqual(before.moments);
  // a stray among readings of one moment does not show
  expect(shownNow(heard(late, 1_000, 0.2), null, 0)?.value).toBe(0.2);
});
