import { notEvaluated } from '../caution/not-evaluated.ts';
import { whoDecides } from '../caution/short-cautions.ts';
import type { Match, MatchedInterval, MatchReason } from './matched.ts';
import { reasonLine } from './reason.ts';

/** A match as `coreward match --json` prints it. docs/match-json.md tells every key. */
export type MatchJson = ReturnType<typeof matchJson>;

/** A match as plain data: SI numbers, best pair first. */
export function matchJson({ purpose, pairs, leftOut }: Match) {
  return {
    coreward: 1,
    for: purpose,
    pairs: pairs.map((pair) => ({
      laser: pair.laser,
      collimator: pair.collimator,
      fibre: pair.fibre,
      score: pair.score.value,
      low: pair.score.low,
      high: pair.score.high,
      ...watts(pair.power),
      guided: pair.guided,
      fundamental: pair.fundamental,
      vNumber: pair.vNumber,
      reason: reasonJson(pair.reason),
      connector: pair.connector,
      connectorNote: pair.connectorNote,
    })),
    leftOut: leftOut.map(({ laser, collimator, fibre, why }) => ({ laser, collimator, fibre, why })),
    cautions: [notEvaluated, whoDecides].map(({ id, level, text }) => ({ id, level, text })),
  };
}

const reasonJson = (reason: MatchReason) => ({
  id: reason.id,
  transmission: reason.transmission,
  againstBest: reason.againstBest,
  text: reasonLine(reason),
});

const watts = ({ value, low, high }: MatchedInterval) => ({ power_W: value, low_W: low, high_W: high });
