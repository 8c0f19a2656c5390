import type { WalkProcedure, WalkRemaining, WalkRemark, WalkVerdict } from './procedure.ts';
import type { WalkAnswer, WalkAxis, WalkStep } from './step.ts';
import { secondsFor } from './step-time.ts';

/** Reading before over after that still counts as the same: a meter's scatter over a minute. @source our proposal */
const sameReading = 0.03;

/** Nothing is left to chance here but the hand's own pace. */
function exactly(steps: readonly WalkStep[]): WalkRemaining {
  const seconds = steps.reduce((sum, step) => sum + secondsFor(step), 0);
  return { steps: [steps.length, steps.length], seconds: [seconds, 2 * seconds] };
}

const axes: readonly WalkAxis[] = ['horizontal', 'vertical'];

/**
 * What comes after the climb: whether the light is in the core at all, then the power, then M2 once more, because
 * mirrors move a little when they get warm. Every step may be skipped.
 *
 * @param withStrip whether cladding light can reach the far end, so that the reading may not be of the core alone
 */
export function* afterWalk(verdict: WalkVerdict, withStrip: boolean): WalkProcedure {
  const { estimate } = verdict;
  const steps: readonly WalkStep[] = [
    ...(withStrip ? [{ kind: 'strip' } as const] : []),
    { kind: 'stand', why: 'after-power' },
    ...axes.map(
      (axis): WalkStep => ({
        kind: 'sweep',
        screw: { mirror: 'M2', axis },
        reach: null,
        why: 'after-power',
      }),
    ),
  ];
  let lost: number | null = null;
  for (const [at, step] of steps.entries()) {
    const remarks: readonly WalkRemark[] =
      lost === null ? [] : [{ id: 'cladding-light', values: { share: lost } }];
    const answer: WalkAnswer = yield { step, estimate, remarks, remaining: exactly(steps.slice(at)) };
    lost = null;
    if (step.kind !== 'strip' || answer.outcome !== 'did') continue;
    const { before, standing } = answer;
    if (before === undefined || standing === undefined || !(before > 0)) continue;
    const share = 1 - standing / before;
    if (share > sameReading) lost = share;
  }
  return verdict;
}
