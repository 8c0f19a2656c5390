import { expect, test } from 'vitest';
import { Refusal } from '../refusal.ts';
import { afterWalk } from './after-walk.ts';
import { checkAnswer } from './check-answer.ts';
import type { WalkEstimate, WalkProcedure } from './procedure.ts';
import { replayWalk } from './replay.ts';
import type { WalkAnswer, WalkStep } from './step.ts';

const unknown: WalkEstimate = {
  missing: null,
  missingLow: null,
  missingHigh: null,
  horizontalShare: null,
  ridge: null,
};
const m2h = { mirror: 'M2', axis: 'horizontal' } as const;

/** Sweeps M2 until a sweep brings no more than the one before. */
function* climbing(): WalkProcedure {
  const ask = (step: WalkStep) => ({ step, estimate: unknown, remarks: [], remaining: null });
  yield ask({ kind: 'floor' });
  let best = 0;
  for (;;) {
    const answer = yield ask({ kind: 'sweep', screw: m2h, reach: null, why: 'climb' });
    const seen = answer.outcome === 'did' ? (answer.highest ?? 0) : 0;
    if (seen <= best) {
      const estimate = { ...unknown, missing: 0.02, missingLow: 0.01, missingHigh: 0.05 };
      return { reason: 'reached', claims95: true, estimate, remarks: [] };
    }
    best = seen;
  }
}

const saw = (highest: number): WalkAnswer => ({ outcome: 'did', highest });
const dark: WalkAnswer = { outcome: 'did', standing: 0.002 };
const after = (answers: readonly WalkAnswer[], withStrip = false) =>
  replayWalk(climbing, (verdict) => afterWalk(verdict, withStrip), answers);

test('the floor is no light: best and last are of what the beam brought', () => {
  const now = after([dark, saw(1), saw(3), { outcome: 'skipped' }]);
  expect(now).toMatchObject({ floor: 0.002, best: 3, last: 3 });
  expect(now.moves.map(({ reading }) => reading)).toEqual([0.002, 1, 3, null]);
});

test('one answer fewer is where the walk was before it', () => {
  const answers = [dark, saw(1), saw(3)];
  expect(after(answers.slice(0, -1))).toEqual(after([dark, saw(1)]));
  expect(after(answers)).not.toEqual(after([dark, saw(1)]));
});

test('behind the verdict stands what comes after, and at last nothing', () => {
  const climbed = [dark, saw(1), saw(1)];
  const done = after(climbed, true);
  expect(done.verdict?.reason).toBe('reached');
  expect(done.ask?.step.kind).toBe('strip');
  expect(done.estimate.missingHigh).toBe(0.05);
  const noStrip = after(climbed);
  expect(noStrip.ask?.step).toEqual({ kind: 'stand', why: 'after-power' });
  const skipped: WalkAnswer = { outcome: 'skipped' };
  const end = after([...climbed, skipped, skipped, skipped, skipped]);
  expect(end).toMatchObject({ ask: null, verdict: { claims95: true } });
  // answers behind the end of everything are left out
  expect(end.moves).toHaveLength(6);
});

test('light that a coil takes away was not in the core, and is said', () => {
  const climbed = [dark, saw(1), saw(1)];
  const strip = (standing: number) => after([...climbed, { outcome: 'did', before: 2, standing }], true);
  // 1 − 1.5 ∕ 2
  expect(strip(1.5).ask?.remarks).toEqual([{ id: 'cladding-light', values: { share: 0.25 } }]);
  expect(strip(2).ask?.remarks).toEqual([]);
});

test('an answer without the reading its step asks for is refused, and one that needs none is not', () => {
  const sweep: WalkStep = { kind: 'sweep', screw: m2h, reach: null, why: 'climb' };
  expect(() => checkAnswer(sweep, { outcome: 'did', standing: 2 })).toThrow(Refusal);
  expect(() => checkAnswer(sweep, saw(Number.NaN))).toThrow('no reading');
  expect(() => checkAnswer(sweep, saw(-1))).toThrow('no reading');
  expect(() => checkAnswer(sweep, saw(0))).not.toThrow();
  expect(() => checkAnswer(sweep, { outcome: 'did-not-work' })).not.toThrow();
  expect(() => checkAnswer({ kind: 'focus', turns: 0.05 }, { outcome: 'did' })).not.toThrow();
  expect(() => checkAnswer({ kind: 'strip' }, { outcome: 'did', standing: 1 })).toThrow('reading before');
});
