import type { DrawnPoint } from '@coreward/bench';

/** How the line runs over the page: from left to right, or, where there is no room, downwards. */
export type Run = 'across' | 'down';

/** A place on the page from one along the light and one beside it; beside is upwards, or to the left where it runs down. */
export type ToPage = (along: number, beside: number) => string;

/** @param axis where the axis of the light lies on the page, across its run */
export function toPage(run: Run, axis: number): ToPage {
  const place = (number: number) => number.toFixed(1);
  return run === 'across'
    ? (along, beside) => `${place(along)} ${place(axis - beside)}`
    : (along, beside) => `${place(axis - beside)} ${place(along)}`;
}

/** The outline of a beam as an SVG path, its width times `share`. */
export function outline(points: readonly DrawnPoint[], share: number, at: ToPage): string {
  if (points.length === 0) return '';
  const above = points.map(({ along, above: edge }) => at(along, edge * share));
  const below = points.map(({ along, below: edge }) => at(along, -edge * share)).reverse();
  return `M${above.join('L')}L${below.join('L')}Z`;
}

/** One of several that lie on each other, as wide as a share of the 1/e² radius. */
export interface Veil {
  readonly share: number;
  readonly opacity: number;
}

/** So opaque that together they are as bright as a Gaussian there; few while a hand moves the light, for each is painted. */
export const veils: Readonly<Record<'atRest' | 'inHand', readonly Veil[]>> = {
  atRest: veilsOf(Array.from({ length: 10 }, (_, i) => 1.45 - i * 0.15)),
  inHand: veilsOf([1.3, 0.95, 0.65, 0.35]),
};

function veilsOf(shares: readonly number[]): readonly Veil[] {
  let lit = 0;
  return shares.map((share) => {
    const wanted = Math.exp(-2 * share * share);
    const opacity = 1 - (1 - wanted) / (1 - lit);
    lit = wanted;
    return { share, opacity };
  });
}
