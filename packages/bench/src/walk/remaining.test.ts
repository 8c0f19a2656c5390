import { seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { drawHidden, usualHiddenLaw } from '../practice/draw-hidden.ts';
import { doStep } from '../practice/play.ts';
import { practiceBench } from '../practice/practice-bench.ts';
import type { Known, WalkGeometry } from './known.ts';
import type { WalkProcedure } from './procedure.ts';
import { lessOne, remainingAt } from './remaining.ts';
import { ridgeWalk } from './ridge-walk.ts';
import { secondsFor } from './step-time.ts';
import { taughtWalk } from './taught-walk.ts';
import { remainingText } from './walk-words.ts';

/** Visible benches by the law of docs/walk.md, seeds that no figure of this room was taken from. */
function benchOf(seed: number) {
  const random = seededUniform(seed);
  const between = (low: number, high: number) => low + (high - low) * random();
  const tilt = 0.0254 / 80 / between(0.025, 0.05);
  const near = between(0.08, 0.25);
  const geometry: WalkGeometry = {
    wavelength: 532e-9,
    modeRadius: between(1.8e-6, 2.2e-6),
    focalLength: between(4e-3, 10e-3),
    nearMirror: near,
    farMirror: near + between(0.15, 0.45),
    tiltPerTurn: [tilt, tilt, tilt, tilt],
    verticalGain: [Math.SQRT2, Math.SQRT2],
  };
  const hidden = drawHidden(geometry, usualHiddenLaw, 1, random);
  const known: Known = {
    ...geometry,
    focalLength: geometry.focalLength * between(0.93, 1.07),
    manyModes: false,
    floor: hidden.floor,
    forecastPeak: null,
    focusThread: null,
  };
  return { known, bench: practiceBench(hidden, random) };
}

/** Of what was told on the way, the shares that held: steps and seconds. */
function held(begin: (known: Known) => WalkProcedure, seeds: readonly number[]) {
  let [told, steps, seconds] = [0, 0, 0];
  for (const seed of seeds) {
    const { known, bench } = benchOf(seed);
    const walk = begin(known);
    const asked: { readonly remaining: ReturnType<typeof remainingAt> | null; readonly took: number }[] = [];
    for (let heard = walk.next(); heard.done !== true; ) {
      const { step, remaining } = heard.value;
      asked.push({ remaining, took: secondsFor(step) });
      heard = walk.next(doStep(bench, step));
    }
    asked.forEach(({ remaining }, i) => {
      if (remaining === null) return;
      told += 1;
      const left = asked.length - i;
      const took = asked.slice(i).reduce((sum, one) => sum + one.took, 0);
      if (left >= remaining.steps[0] && left <= remaining.steps[1]) steps += 1;
      // a rest of a step is no matter where minutes are told
      if (took >= remaining.seconds[0] - 10 && took <= remaining.seconds[1] + 10) seconds += 1;
    });
  }
  return { told, steps: steps / told, seconds: seconds / told };
}

for (const [name, begin, count] of [
  ['ridge', ridgeWalk, 16],
  ['taught', (known: Known) => taughtWalk(known), 60],
  ['taught, two rounds', (known: Known) => taughtWalk(known, 2), 40],
] as const) {
  test(`${name}: of what is told to remain, most holds, and every step tells it`, () => {
    const seeds = Array.from({ length: count }, (_, i) => 700_000 + i);
    const { told, steps, seconds } = held(begin, seeds);
    expect(told).toBeGreaterThan(5 * count);
    // nine of ten is what is said; 16 walks, each of which is right or wrong for long, scatter by 7 points: two of them
    expect(steps).toBeGreaterThan(0.76);
    expect(seconds).toBeGreaterThan(0.76);
  }, 120_000);
}

test('an interval that is told says something: its end is not its beginning, and it shrinks towards the end', () => {
  const far = remainingAt({ kind: 'along', ahead: 4, coarse: 0.01 });
  const near = remainingAt({ kind: 'polish', axis: 1, tries: 0, coarse: 0.01 });
  expect(far.steps[0]).toBeGreaterThan(near.steps[0]);
  expect(far.steps[1]).toBeGreaterThan(near.steps[1]);
  expect(near.steps[1]).toBeGreaterThan(near.steps[0]);
  expect(lessOne({ steps: [1, 1], seconds: [4, 9] }, 13)).toEqual({ steps: [1, 1], seconds: [0, 13] });
});

test('what remains is said in steps and minutes, with both ends', () => {
  // 95 and 475 s are 1.6 and 7.9 min
  expect(remainingText({ steps: [10, 50], seconds: [95, 475] })).toBe(
    'Probably 10 to 50 steps more, this one included: 2 to 8 min.',
  );
  expect(remainingText({ steps: [1, 1], seconds: [3, 6] })).toBe('This is probably the last step.');
  expect(remainingText(null)).toBeNull();
});
