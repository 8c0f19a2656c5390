import type { GaugeResult } from './gauge.ts';

/** The answers as they are handed on to other programs: an array, SI, null where undetermined. */
export function gaugeJson({ answers }: GaugeResult) {
  return answers.map(
    ({ quantity, value, uncertainty, low, high, verdict, because, add, contributions, at }) => ({
      quantity,
      ...(at === undefined ? {} : { at_m: at }),
      value,
      uncertainty,
      low,
      high,
      verdict,
      because,
      add,
      contributions: contributions.map((contribution) => ({ ...contribution })),
    }),
  );
}
