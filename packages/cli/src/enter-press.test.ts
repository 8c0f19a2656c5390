import {
  heardInTurn,
  newTurn,
  notPressed,
  type Pressed,
  seenWhilePressed,
  type TurnContext,
  turnNow,
  type WalkStep,
} from '@coreward/bench';
import { expect, test } from 'vitest';
import { pressEnter } from './enter-press.ts';

const contextOf = (step: WalkStep): TurnContext => ({
  step,
  floor: 0,
  peak: 1e-3,
  noise: null,
  turned: null,
});

/** A turn that has heard these readings, in mW, one every 20 ms. */
function heard(step: WalkStep, milliwatts: readonly number[]) {
  const context = contextOf(step);
  const turn = milliwatts.reduce(
    (before, value, i) => heardInTurn(before, context, { t: 20 * i, value: value * 1e-3, saturated: false }),
    newTurn,
  );
  return turnNow(turn, context, false);
}

const sweep: WalkStep = {
  kind: 'sweep',
  screw: { mirror: 'M2', axis: 'horizontal' },
  reach: null,
  why: 'climb',
};
const still = Array<number>(200).fill(1);

test('what is not ready is taken by a second press, and the first says what it takes and against what', () => {
  const turn = heard(sweep, still);
  expect(turn.isReady).toBe(false);
  const first = pressEnter(notPressed, turn, sweep, 'power', 1000);
  expect(first).toMatchObject({ do: 'say' });
  if (first.do !== 'say') return;
  expect(first.text).toMatch(
    /nothing has moved it yet\. Press Enter again to take 1\.00? mW all the same\./u,
  );
  expect(pressEnter(first.pressed, turn, sweep, 'power', 9000)).toMatchObject({ do: 'answer' });
  // eight seconds later nobody remembers what was asked
  expect(pressEnter(first.pressed, turn, sweep, 'power', 9001)).toMatchObject({ do: 'say' });
});

test('one press takes what is ready, or was a moment ago', () => {
  const stand: WalkStep = { kind: 'stand', why: 'start' };
  const rested = heard(stand, still);
  expect(rested.isReady).toBe(true);
  expect(pressEnter(notPressed, rested, stand, 'power', 0)).toMatchObject({ do: 'answer' });
  const lately: Pressed = seenWhilePressed({ ...notPressed, askedAt: 0 }, rested.isReady, 5000);
  // what has become ready since has forgotten the question
  expect(lately.askedAt).toBeNull();
  const moved = heard(stand, [...still, ...still.map((value, i) => value + 0.01 * i)]);
  expect(moved.isReady).toBe(false);
  expect(pressEnter(lately, moved, stand, 'power', 5700)).toMatchObject({ do: 'answer' });
  expect(pressEnter(lately, moved, stand, 'power', 5701)).toMatchObject({ do: 'say' });
});

test('a step that asks for two readings takes one with each press', () => {
  const strip: WalkStep = { kind: 'strip' };
  const first = pressEnter(notPressed, heard(strip, still), strip, 'power', 0);
  expect(first).toMatchObject({ do: 'say' });
  if (first.do !== 'say') return;
  expect(first.text).toContain('Taken as the reading before');
  const second = pressEnter(first.pressed, heard(strip, Array<number>(200).fill(0.9)), strip, 'power', 9000);
  expect(second).toMatchObject({ do: 'answer', answer: { outcome: 'did' } });
  if (second.do !== 'answer' || second.answer.outcome !== 'did') return;
  expect(second.answer.before).toBeCloseTo(1e-3, 12);
  expect(second.answer.standing).toBeCloseTo(0.9e-3, 12);
});
