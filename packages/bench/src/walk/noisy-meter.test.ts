import { seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { play } from '../practice/play.ts';
import { practiceBench } from '../practice/practice-bench.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import { knownOf } from './known.ts';
import { ridgeWalk } from './ridge-walk.ts';

const launch = readLaunch(observingLoftLaunch, 'the example');
const known = knownOf(launch);
const seeds = Array.from({ length: 40 }, (_, i) => 7_000 + i);

/** Walks that say of themselves that 95 % are in, those of them that are wrong, and those that say that the meter is noisy. */
function walkedWith(noise: number) {
  let [claims, wrong, noisy] = [0, 0, 0];
  for (const seed of seeds) {
    const random = seededUniform(seed);
    const hidden = { ...hiddenBenchOf(launch, random, 'steered-by-eye'), noise };
    const { verdict, track } = play(practiceBench(hidden, random), ridgeWalk(known));
    if (verdict.remarks.some(({ id }) => id === 'peaks-scatter')) noisy += 1;
    if (!verdict.claims95) continue;
    claims += 1;
    if (track.at(-1)!.share < 0.95) wrong += 1;
  }
  return { claims, wrong, noisy };
}

test('a meter noisier than a claim counts with is noticed, and seldom brings a wrong claim', {
  timeout: 120_000,
}, () => {
  const { wrong, noisy } = walkedWith(0.05);
  // 6 of 120 on other benches with that noise; of 40 so seldom that 6 are two standard deviations more
  expect(wrong).toBeLessThanOrEqual(6);
  // as soon as each screw was looked at twice; half of these end before that. A share of 40 scatters by 8 points
  expect(noisy).toBeGreaterThan(seeds.length / 3);
});

test('a usual meter is not called noisy', { timeout: 120_000 }, () => {
  const { claims, noisy } = walkedWith(0.02);
  // 7 of 197 on other benches, where noise goes up to 3 %; 5 of 40 is two standard deviations more
  expect(noisy).toBeLessThanOrEqual(5);
  expect(claims).toBeGreaterThan(seeds.length / 2);
});
