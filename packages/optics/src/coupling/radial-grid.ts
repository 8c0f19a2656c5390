import { gaussLegendre } from '../numerics/gauss-legendre.ts';

/** Nodes and weights over radius; the weights carry the factor ρ of the area element. */
export interface RadialGrid {
  readonly nodes: Float64Array;
  readonly weights: Float64Array;
  /** Tells one grid from another: equal keys, equal grids. */
  readonly key: string;
}

/** Gauss-Legendre nodes on consecutive panels, `edges` in rising order, `counts[i]` nodes between edges i and i + 1. */
export function radialGrid(edges: readonly number[], counts: readonly number[]): RadialGrid {
  const total = counts.reduce((sum, count) => sum + count, 0);
  const nodes = new Float64Array(total);
  const weights = new Float64Array(total);
  let at = 0;
  counts.forEach((count, panel) => {
    const from = edges[panel]!;
    const half = (edges[panel + 1]! - from) / 2;
    const rule = gaussLegendre(count);
    for (let i = 0; i < count; i += 1) {
      const rho = from + half * (1 + rule.nodes[i]!);
      nodes[at] = rho;
      weights[at] = half * rule.weights[i]! * rho;
      at += 1;
    }
  });
  return {
    nodes,
    weights,
    key: `${edges.map((edge) => edge.toPrecision(12)).join(',')}:${counts.join(',')}`,
  };
}

/** The next count in a coarse series, so that similar beams share one grid and its mode tables. */
export function roundedCount(count: number): number {
  let step = 16;
  while (step < count) step = Math.ceil(step * 1.26);
  return step;
}
