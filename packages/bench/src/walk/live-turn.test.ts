import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import type { Reading } from '../instrument/reading.ts';
import { heardInTurn, newTurn, type TurnContext } from './live-turn.ts';
import type { WalkStep } from './step.ts';
import { turnNow } from './turn-now.ts';
import type { TurnNow } from './turn-sign.ts';
import { turnSaid } from './turn-words.ts';

const m2h = { mirror: 'M2', axis: 'horizontal' } as const;
const sweep: WalkStep = { kind: 'sweep', screw: m2h, reach: null, why: 'climb' };
const bringBack: WalkStep = { kind: 'sweep', screw: m2h, reach: null, why: 'bring-back' };
const detune: WalkStep = {
  kind: 'detune',
  screw: { mirror: 'M1', axis: 'horizontal' },
  sense: 1,
  target: 0.051,
  fraction: 0.05,
};
/** A floor of a thousandth, a last peak of 1, no word on noise. */
const known = { floor: 0.001, peak: 1, noise: null, turned: null } as const;

/** Light, second by second, as a meter of 10 readings a second with 1 % of noise tells it. */
function seen(
  step: WalkStep,
  seconds: readonly (number | null | 'full')[],
  context: Partial<TurnContext> = {},
): TurnNow {
  const judged = { ...known, ...context, step };
  const random = seededUniform(3);
  let turn = newTurn;
  let before = typeof seconds[0] === 'number' ? seconds[0] : 0;
  let t = 1e12;
  for (const light of seconds) {
    for (let i = 1; i <= 10; i += 1) {
      t += 100;
      const to = typeof light === 'number' ? before + ((light - before) * i) / 10 : before;
      const noisy = to * (1 + 0.01 * normalFrom(random)) + 0.001 * (1 + 0.05 * normalFrom(random));
      const reading: Reading =
        light === null
          ? { t, value: null, saturated: false }
          : { t, value: light === 'full' ? 9 : noisy, saturated: light === 'full' };
      turn = heardInTurn(turn, judged, reading);
    }
    if (typeof light === 'number') before = light;
  }
  return turnNow(turn, judged, false);
}

/** From a half over the top and beyond, in seconds of one value each. */
const over = [0.5, 0.7, 0.9, 1, 0.97, 0.85, 0.7];

test('a sweep goes on, is past its peak, is told where to come back to, and is taken at it', () => {
  expect(seen(sweep, over.slice(0, 3)).sign).toBe('rising');
  const past = seen(sweep, over);
  expect(past).toMatchObject({ sign: 'past', isSettled: false });
  // the top is 1 and a floor of 0.001; noise of 1 % by three readings
  expect(past.goal).toBeGreaterThan(0.98);
  expect(past.goal).toBeLessThan(1.03);
  expect(turnSaid(past, sweep, 'power').short).toMatch(
    /^Past the peak: back until (9\d\d mW|1(\.0\d)? W)\.$/u,
  );
  const back = seen(sweep, [...over, 0.9, 1, 1, 1]);
  expect(back).toMatchObject({ sign: 'back-at-peak', isSettled: true });
  expect(back.take).toEqual({ outcome: 'did', highest: back.goal });
});

test('a sweep that begins at the top is sent back over it, for its other side is unseen', () => {
  expect(seen(sweep, [1, 0.95, 0.8, 0.6]).sign).toBe('other-way');
  expect(seen(sweep, [1, 0.95, 0.8, 0.6, 0.8, 1, 0.9, 0.7]).sign).toBe('past');
});

test('nobody is told to come back to a stray', () => {
  const judged = { ...known, step: sweep };
  let turn = newTurn;
  for (let i = 0; i < 60; i += 1) {
    const value = i === 30 ? 40 : 0.5 + 0.001 * (i % 3);
    turn = heardInTurn(turn, judged, { t: 1e12 + 100 * i, value, saturated: false });
  }
  expect(turnNow(turn, judged, false).held).toBeLessThan(0.51);
});

test('a gap makes the step wait, and what was held before it is held after it', () => {
  const gone = seen(sweep, [...over, null]);
  expect(gone).toMatchObject({ sign: 'gap', shown: null, take: null });
  const again = seen(sweep, [...over, null, 0.7, 0.7]);
  expect(again.sign).toBe('past');
  expect(again.goal).toBeGreaterThan(0.98);
});

test('light beyond the range is no peak, and the turn is spoiled until the walk begins anew', () => {
  const full = seen(sweep, [0.5, 0.9, 'full', 0.9, 0.6]);
  expect(full).toMatchObject({ sign: 'too-much', take: null, isSettled: false });
  expect(turnSaid(full, sweep, 'power').mend).toContain('Lower its gain or the laser power');
  // one reading at the end of the range is a stray like any other
  const judged = { ...known, step: sweep };
  let turn = newTurn;
  for (let i = 0; i < 30; i += 1)
    turn = heardInTurn(turn, judged, { t: 1e12 + 100 * i, value: 0.5, saturated: i === 12 });
  expect(turnNow(turn, judged, false).sign).not.toBe('too-much');
});

test('light that goes out at once was covered, and light that is turned away is not', () => {
  const judged = { ...known, step: sweep };
  let turn = newTurn;
  const hear = (values: readonly number[], from: number) => {
    values.forEach((value, i) => {
      turn = heardInTurn(turn, judged, { t: from + 100 * i, value, saturated: false });
    });
  };
  hear(Array(30).fill(0.8), 1e12);
  hear(Array(10).fill(0.001), 1e12 + 3000);
  const covered = turnNow(turn, judged, false);
  expect(covered.sign).toBe('covered');
  expect(turnSaid(covered, sweep, 'power').mend).toContain('covered');
  // turned away, the light falls over seconds
  expect(['past', 'falls-on']).toContain(seen(sweep, [...over, 0.3, 0.1, 0.02, 0.003, 0, 0]).sign);
  // a sweep that has seen nothing at all says so
  expect(seen(sweep, [0, 0, 0, 0, 0, 0]).sign).toBe('dark');
  // and what is to be compared is never taken in the dark
  const compare: WalkStep = { kind: 'stand', why: 'compare' };
  expect(seen(compare, [0, 0, 0])).toMatchObject({ sign: 'dark', take: null });
  expect(seen({ kind: 'stand', why: 'start' }, [0, 0, 0]).take).not.toBeNull();
});

test('a sweep of the wrong screw brings no light back, and says so', () => {
  const wrong = seen(bringBack, [0.012, 0.014, 0.016, 0.014, 0.012, 0.01]);
  expect(wrong.sign).toBe('not-back');
  expect(turnSaid(wrong, bringBack, 'power').mend).toContain('M2 horizontal');
  expect(seen(bringBack, [0.012, 0.1, 0.5, 0.8, 0.7, 0.5]).sign).toBe('past');
});

test('noise that was told in bright light is none of what a step has left: that is not dark', () => {
  // 1 % of the last peak, which is as much as the light that the step has left
  const told = { noise: 0.01 };
  const wrong = [0.0125, 0.006, 0.012, 0.006, 0.012, 0.012, 0.012];
  expect(seen(bringBack, wrong, told).sign).toBe('not-back');
  expect(seen(bringBack, [0.012, 0.1, 0.5, 0.8, 0.7, 0.5], told).sign).toBe('past');
});

test('a screw that nothing follows is asked about', () => {
  const still = Array<number>(25).fill(0.9);
  expect(seen(detune, still).sign).toBe('still');
  expect(seen(detune, still.slice(0, 10)).sign).toBe('lower');
});

test('a detuning stops at its target, is turned back where it went too far, and its answer says where it stands', () => {
  const down = [1, 0.6, 0.3, 0.1];
  expect(seen(detune, down)).toMatchObject({ sign: 'lower', take: null, goal: 0.051 });
  const there = seen(detune, [...down, 0.05, 0.05, 0.05]);
  expect(there).toMatchObject({ sign: 'at-target', isSettled: true });
  expect(there.take?.outcome === 'did' && there.take.standing).toBeCloseTo(0.051, 2);
  const far = seen(detune, [...down, 0.02, 0.02]);
  expect(far.sign).toBe('too-low');
  // no light left at all is nothing to go on from
  expect(seen(detune, [...down, 0.02, 0, 0])).toMatchObject({ sign: 'too-low', take: null });
});

test('a blocked beam is known by its fall alone; without one a hand must press', () => {
  const floor: WalkStep = { kind: 'floor' };
  const unknown = { floor: null, peak: null };
  expect(seen(floor, [0.5, 0.5, 0.5], unknown)).toMatchObject({ sign: 'block', isSettled: false });
  expect(seen(floor, [0.5, 0.5, 0, 0, 0], unknown)).toMatchObject({ sign: 'resting', isSettled: true });
});

test('what stands is answered without a press, but not that the power was raised', () => {
  expect(seen({ kind: 'stand', why: 'compare' }, [0.5, 0.5, 0.5]).isSettled).toBe(true);
  const raised = seen({ kind: 'stand', why: 'after-power' }, [0.5, 0.5, 0.5]);
  expect(raised).toMatchObject({ sign: 'resting', isSettled: false });
  expect(raised.take).not.toBeNull();
});

test('the middle of a plateau is taken only behind both its edges', () => {
  const middle: WalkStep = { kind: 'middle', screw: m2h, target: 0.5 };
  expect(seen(middle, [1, 1, 0.7]).sign).toBe('first-edge');
  expect(seen(middle, [1, 0.7, 0.5, 0.45, 0.8, 1]).sign).toBe('second-edge');
  const both = seen(middle, [1, 0.7, 0.45, 0.8, 1, 0.8, 0.45, 0.6, 0.9, 0.9, 0.9]);
  expect(both.sign).toBe('to-middle');
  expect(both.take?.outcome).toBe('did');
  expect(seen(middle, [1, 0.7, 0.45, 0.8, 1, 0.8, 0.45]).take).toBeNull();
});
