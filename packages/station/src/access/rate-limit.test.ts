import { expect, test } from 'vitest';
import { fakeWorld } from '../fake-world.ts';
import { RateLimit } from './rate-limit.ts';

/** How many of so many questions in a row are allowed. */
const allowed = (limit: RateLimit, comer: string, times: number): number =>
  Array.from({ length: times }, () => limit.allows(comer)).filter(Boolean).length;

test('a burst at once, then so many a second, and never more than the burst', () => {
  const world = fakeWorld();
  const limit = new RateLimit({ burst: 10, perSecond: 2 }, world.now);
  expect(allowed(limit, 'a', 20)).toBe(10);
  expect(allowed(limit, 'b', 20)).toBe(10);
  world.wait(3_000);
  expect(allowed(limit, 'a', 20)).toBe(6);
  world.wait(3_600_000);
  expect(allowed(limit, 'a', 20)).toBe(10);
});

test('a clock that is set back gives nothing and takes nothing', () => {
  const world = fakeWorld();
  const limit = new RateLimit({ burst: 10, perSecond: 2 }, world.now);
  expect(allowed(limit, 'a', 4)).toBe(4);
  world.wait(-3_600_000);
  expect(allowed(limit, 'a', 20)).toBe(6);
  world.wait(1_000);
  expect(allowed(limit, 'a', 20)).toBe(2);
});

test('of more comers than are told apart those who were quiet longest are forgotten', () => {
  const world = fakeWorld();
  const limit = new RateLimit({ burst: 1, perSecond: 0.001 }, world.now);
  limit.allows('first');
  for (let comer = 0; comer < 4_999; comer += 1) limit.allows(`${comer}`);
  expect(limit.allows('first')).toBe(false);
  // now '0' has been quiet longest
  limit.allows('one more');
  expect(limit.allows('0')).toBe(true);
  expect(limit.allows('first')).toBe(false);
});
