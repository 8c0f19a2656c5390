import type { MatchedInterval } from './matched.ts';

/** How far a factor may lie from its stated value: natural logarithms down to its 5 % point and up to its 95 % point. */
export interface LogSpread {
  readonly down: number;
  readonly up: number;
}

/** What is known exactly. */
export const noSpread: LogSpread = { down: 0, up: 0 };

/** The spread of a factor that is `ratios` times its stated value at the two ends of one doubt. */
export function spreadOfRatios(...ratios: readonly number[]): LogSpread {
  // where both ends lose, as beside an optimum, the stated value is the upper end
  return {
    down: Math.max(0, -Math.log(Math.min(1, ...ratios))),
    up: Math.max(0, Math.log(Math.max(1, ...ratios))),
  };
}

/**
 * Independent doubts together: in quadrature, each side by itself.
 *
 * @source JCGM 100:2008 (GUM), 5.1.2, equation (10), for the logarithm of a product; sides apart is our own
 */
export function together(spreads: readonly LogSpread[]): LogSpread {
  let down = 0;
  let up = 0;
  for (const spread of spreads) {
    down += spread.down ** 2;
    up += spread.up ** 2;
  }
  return { down: Math.sqrt(down), up: Math.sqrt(up) };
}

/** The interval about a stated value. */
export function intervalAbout(value: number, { down, up }: LogSpread): MatchedInterval {
  return { value, low: value * Math.exp(-down), high: value * Math.exp(up) };
}
