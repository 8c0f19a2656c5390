import { footprintOf, type GaussianField } from './gaussian-field.ts';
import type { ModeSet } from './mode-set.ts';
import { type RadialGrid, radialGrid, roundedCount } from './radial-grid.ts';

/*
 * Grids derived from what is to be integrated, never fixed: where beam and mode both have amplitude, and as many nodes
 * as the product has waves, humps and decays there. Edges and counts are rounded outwards to a coarse series, so that a
 * beam that is dragged a little meets the tables made a moment ago.
 */

/** How fine a grid must be for an error of a power: 1 stands for 1e−9, and a forecast's draws need less than half. */
export function finenessFor(tolerance: number): number {
  return Math.min(1.15, Math.max(0.4, Math.log10(1 / tolerance) / 9));
}

/** 1/e² radii of the beam beyond which its amplitude does not count: at fineness 1 it is e⁻²⁷ there, 2e−12. */
const beamReach = (fineness: number): number => 5.2 * Math.sqrt(fineness);

/** The smallest 1/e² radius of a field, which sets how fast it varies. */
function finestRadius(field: GaussianField): number {
  const half = (field.mxxRe + field.myyRe) / 2;
  return 1 / Math.sqrt(half + Math.hypot((field.mxxRe - field.myyRe) / 2, field.mxyRe));
}

/** Fastest phase of the field along a radius at rho, rad per unit. */
function phaseRate(field: GaussianField, rho: number): number {
  const half = Math.abs(field.mxxIm + field.myyIm) / 2;
  const curvature = half + Math.hypot((field.mxxIm - field.myyIm) / 2, field.mxyIm);
  return Math.hypot(field.bxIm, field.byIm) + 2 * curvature * rho;
}

const roundedUp = (x: number): number => 2 ** (Math.ceil(4 * Math.log2(x)) / 4);

/** From where to where along the radius there is any beam; `spread` is in 1/e² radii. */
function radialReach(field: GaussianField, spread: number): readonly [number, number] {
  const { x, y, radius } = footprintOf(field);
  const centre = Math.hypot(x, y);
  const inner = centre - spread * radius;
  const outer = roundedUp(centre + spread * radius);
  return [inner > 0.2 * outer ? Math.floor((10 * inner) / outer) * 0.1 * outer : 0, outer];
}

function panels(edges: readonly number[], countOf: (from: number, to: number) => number): RadialGrid {
  return radialGrid(
    edges,
    edges.slice(1).map((to, i) => roundedCount(countOf(edges[i]!, to))),
  );
}

/**
 * Grid over the facet, in core radii, good for every one of `fields`: split at the core's edge, where the second
 * derivative of a mode jumps. `lobes` is the highest order of Hermite-Gauss members, which reach wider and wave more.
 */
export function facetGrid(
  set: ModeSet,
  fields: readonly GaussianField[],
  fineness: number,
  lobes = 0,
): RadialGrid {
  const reaches = fields.map((field) => radialReach(field, beamReach(fineness) * Math.sqrt(1 + lobes / 3)));
  const inner = reaches.reduce((least, [from]) => Math.min(least, from), Number.POSITIVE_INFINITY);
  const farthest = reaches.reduce((most, [, to]) => Math.max(most, to), 0);
  const outer = Math.min(farthest, set.outerRadius(fineness));
  const finest = fields.reduce(
    (least, field) => Math.min(least, finestRadius(field)),
    Number.POSITIVE_INFINITY,
  );
  const fastestMode = set.modes.reduce((most, { u }) => Math.max(most, u), 0);
  const quickestDecay = set.modes.reduce((most, { w }) => Math.max(most, w), 0);
  const edges = [Math.min(inner, outer * 0.9)];
  if (edges[0]! < 1) edges.push(Math.min(1, outer));
  // outside, panels that grow threefold: near the core the well-guided modes vanish, far out the loose ones live
  let step = 8 / quickestDecay;
  while (edges.at(-1)! < outer - 1e-12) {
    edges.push(Math.min(edges.at(-1)! + step, outer));
    step *= 3;
  }
  return panels(edges, (from, to) => {
    const length = to - from;
    const fastest = fields.reduce((most, field) => Math.max(most, phaseRate(field, to)), 0);
    const waves = length * (fastest + (to <= 1 ? fastestMode : 0));
    return 15 * fineness + 0.56 * waves + (2.6 * fineness * length) / finest + 1.5 * lobes;
  });
}

/** Grid over Q = q·a for the overlap in a lens pupil that ends at `stop` (infinite: no stop). */
export function pupilGrid(
  set: ModeSet,
  spectrum: GaussianField,
  stop: number,
  aberrationRate: (q: number) => number,
  fineness: number,
): RadialGrid {
  const [inner, beamOuter] = radialReach(spectrum, beamReach(fineness));
  const outer = Math.min(beamOuter, stop);
  const finest = finestRadius(spectrum);
  const slowestDecay = set.modes.reduce((least, { w }) => Math.min(least, w), Number.POSITIVE_INFINITY);
  const start = Math.min(inner, outer * 0.9);
  const edges = [start];
  // spectra have poles at Q = ±iw: panels must not be much longer than their distance from them
  let step = 6 * slowestDecay;
  while (edges.at(-1)! < outer - 1e-12) {
    edges.push(Math.min(edges.at(-1)! + step, outer));
    step *= 3;
  }
  return panels(edges, (from, to) => {
    const length = to - from;
    const waves = length * (phaseRate(spectrum, to) + 1 + aberrationRate(to));
    return 15 * fineness + 0.56 * waves + (2.6 * fineness * length) / finest;
  });
}
