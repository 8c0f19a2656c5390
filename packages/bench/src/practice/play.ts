import type { WalkProcedure, WalkVerdict } from '../walk/procedure.ts';
import { turnsAScrew, type WalkAnswer, type WalkStep } from '../walk/step.ts';
import { secondsFor } from '../walk/step-time.ts';
import type { PracticeBench } from './practice-bench.ts';

/** What a step asks, done on a simulated bench. */
export function doStep(bench: PracticeBench, step: WalkStep): WalkAnswer {
  switch (step.kind) {
    case 'floor':
      return { outcome: 'did', standing: bench.floor() };
    case 'stand': {
      // to compare, a meter is watched for some seconds and its mean typed
      const looks = step.why === 'compare' ? 2 : 1;
      const readings = Array.from({ length: looks }, () => bench.standing());
      return { outcome: 'did', standing: readings.reduce((sum, reading) => sum + reading, 0) / looks };
    }
    case 'sweep':
      return { outcome: 'did', highest: bench.sweep(step.screw, step.reach) };
    case 'detune':
      bench.detune(step.screw, step.sense, step.target);
      return { outcome: 'did' };
    case 'turn':
      bench.countedTurn(step.screw, step.turns);
      return { outcome: 'did' };
    case 'middle':
      bench.middle(step.screw, step.target);
      return { outcome: 'did', standing: bench.standing() };
    case 'focus':
      return { outcome: bench.focus(step.turns) ? 'did' : 'skipped' };
    case 'strip':
      // a simulated bench has no light in the cladding
      return { outcome: 'skipped' };
  }
}

/** How one walk on a simulated bench went. */
export interface Played {
  readonly verdict: WalkVerdict;
  /** The start, and every turn of a screw. */
  readonly track: readonly Tracked[];
  /** Screws turned. */
  readonly turned: number;
}

/** Where a walk stood once a screw was turned. */
export interface Tracked {
  /** True share of the achievable peak as the screws stand. */
  readonly share: number;
  /** The highest share on the way there: a sweep passes the peak and stops beside it. */
  readonly touched: number;
  /** Readings typed by then, that of this turn included, and what the clock says, s. */
  readonly typed: number;
  readonly seconds: number;
}

/** Plays a walk to its end. It is told what is read, and nothing else. */
export function play(bench: PracticeBench, procedure: WalkProcedure): Played {
  const start = bench.trueShare();
  const track: Tracked[] = [{ share: start, touched: start, typed: 0, seconds: 0 }];
  let [typed, seconds] = [0, 0];
  let heard = procedure.next();
  while (heard.done !== true) {
    const { step } = heard.value;
    const answer = doStep(bench, step);
    if (answer.outcome === 'did') {
      typed += answer.highest === undefined && answer.standing === undefined ? 0 : 1;
      seconds += secondsFor(step);
      if (turnsAScrew(step)) {
        const share = bench.trueShare();
        const touched = step.kind === 'sweep' ? Math.max(share, bench.passedShare()) : share;
        track.push({ share, touched, typed, seconds });
      }
    }
    heard = procedure.next(answer);
  }
  return { verdict: heard.value, track, turned: track.length - 1 };
}
