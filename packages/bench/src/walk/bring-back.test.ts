import { seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { doStep } from '../practice/play.ts';
import { practiceBench } from '../practice/practice-bench.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import { knownOf } from './known.ts';
import { ridgeWalk } from './ridge-walk.ts';
import type { Screw, WalkStep } from './step.ts';
import { taughtWalk } from './taught-walk.ts';

const launch = readLaunch(observingLoftLaunch, 'the example');
const other = ({ mirror, axis }: Screw): Screw => ({
  mirror,
  axis: axis === 'horizontal' ? 'vertical' : 'horizontal',
});

/** A hand that takes the wrong screw at some steps, counted from 0; what is said at each step, and the verdict. */
function walked(procedure: 'ridge' | 'taught', wrongAt: (step: WalkStep, at: number) => boolean) {
  const random = seededUniform(6);
  const bench = practiceBench(hiddenBenchOf(launch, random, 'steered-by-eye'), random);
  const known = { ...knownOf(launch), floor: bench.floor() };
  const walk = procedure === 'ridge' ? ridgeWalk(known) : taughtWalk(known);
  const said: { readonly step: WalkStep; readonly remarks: readonly string[] }[] = [];
  let heard = walk.next();
  for (let at = 0; heard.done !== true; at += 1) {
    const { step, remarks } = heard.value;
    said.push({ step, remarks: remarks.map(({ id }) => id) });
    const isWrong = 'screw' in step && wrongAt(step, at);
    heard = walk.next(doStep(bench, isWrong ? ({ ...step, screw: other(step.screw) } as WalkStep) : step));
  }
  return { said, verdict: heard.value, share: bench.trueShare() };
}

for (const procedure of ['ridge', 'taught'] as const) {
  test(`${procedure}: M2 turned at the wrong screw once is noticed, searched farther, and the walk ends well`, () => {
    let done = false;
    const { said, share } = walked(procedure, (step) => {
      if (done || step.kind !== 'sweep' || step.why !== 'bring-back') return false;
      done = true;
      return true;
    });
    const at = said.findIndex(({ remarks }) => remarks.includes('light-not-back'));
    expect(at).toBeGreaterThan(0);
    expect(said[at]?.step).toMatchObject({ kind: 'sweep', why: 'bring-back', reach: 0.3 });
    expect(said.some(({ remarks }) => remarks.includes('step-undone'))).toBe(false);
    // no worse than a walk is known to end: reference/walk has 5 in 100 below 0.88
    expect(share).toBeGreaterThan(0.85);
  });

  test(`${procedure}: light that M2 never brings back is brought back by M1, and in the end it is something else`, () => {
    const always = walked(procedure, (step) => step.kind === 'sweep' && step.why === 'bring-back');
    const undo = always.said.find(({ remarks }) => remarks.includes('step-undone'));
    expect(undo?.step).toMatchObject({ kind: 'sweep', why: 'undo', screw: { mirror: 'M1' } });
    expect(always.verdict.reason).toBe('something-else');
    expect(always.verdict.claims95).toBe(false);
  });
}

test('a right hand never hears of it', () => {
  for (const procedure of ['ridge', 'taught'] as const) {
    const { said } = walked(procedure, () => false);
    expect(said.flatMap(({ remarks }) => remarks)).not.toContain('light-not-back');
  }
});
