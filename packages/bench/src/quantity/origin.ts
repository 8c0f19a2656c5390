import { type Origin, origins } from './quantity.ts';

/** Below zero if `a` is trusted more than `b`, above zero if less: sorts the most trusted first. */
export function compareOrigins(a: Origin, b: Origin): number {
  return origins.indexOf(a) - origins.indexOf(b);
}

/** The least trusted of them: no result is trusted more than its weakest input. Of nothing it is `measured`. */
export function weakestOrigin(of: readonly Origin[]): Origin {
  return of.reduce((weakest, origin) => (compareOrigins(origin, weakest) > 0 ? origin : weakest), origins[0]);
}
