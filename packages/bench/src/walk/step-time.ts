import { answerOf, type WalkStep } from './step.ts';

/** Times of a hand, s (our own assumptions, no source). */
const clock = { turn: 5, detune: 6, sweep: 10, wideSweep: 14, reading: 3 } as const;
/** A sweep that looks farther than this takes longer, turns. */
const wide = 0.3;

/** How long a step takes, its reading noted, s. */
export const secondsFor = (step: WalkStep): number =>
  turning(step) + (answerOf(step) === null ? 0 : clock.reading);

function turning(step: WalkStep): number {
  switch (step.kind) {
    case 'sweep':
      return step.reach !== null && step.reach > wide ? clock.wideSweep : clock.sweep;
    case 'detune':
      return clock.detune;
    case 'turn':
    case 'focus':
      return clock.turn;
    case 'middle':
      return 2 * clock.detune;
    case 'stand':
      return step.why === 'compare' ? clock.reading : 0;
    case 'floor':
    case 'strip':
      return 0;
  }
}
