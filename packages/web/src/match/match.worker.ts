import { drawerOfParts, matching, matchRows, placesRefused, Refusal, rowOf } from '@coreward/bench';
import type { MatchQuestion, MatchSaid } from './protocol.ts';

/** How often it tells how far it is, ms. */
const telling = 60;

const say = (said: MatchSaid): void => self.postMessage(said);

self.onmessage = ({ data }: MessageEvent<MatchQuestion>): void => {
  try {
    answer(data);
  } catch (error) {
    if (error instanceof Refusal) say({ kind: 'refused', refused: placesRefused(error) });
    else say({ kind: 'fault', message: error instanceof Error ? error.message : String(error) });
  }
};

function answer({ parts, way, purpose, laser }: MatchQuestion): void {
  const steps = matching(drawerOfParts(parts, way), { purpose, laser });
  let told = performance.now();
  for (let step = steps.next(); ; step = steps.next()) {
    if (step.done === true) {
      say({ kind: 'done', rows: matchRows(step.value), leftOut: step.value.leftOut });
      return;
    }
    const now = performance.now();
    if (now - told < telling) continue;
    told = now;
    const { done, total, best } = step.value;
    say({ kind: 'progress', done, total, best: best === null ? null : rowOf(best, 1, purpose) });
  }
}
