/** The free beam, stretch by stretch: from the laser's exit to the facet, each stretch beginning where a part stands. */
import { fullDivergence, type GaussianBeam, waistBehindLens, wavefrontRadiusAt } from '@coreward/optics';
import type { Draw } from '../forecast/draw.ts';
import { laserBeam } from '../forecast/travelling-beam.ts';
import { focalLengthFor } from '../forecast/way-to-the-facet.ts';
import type { Launch, PathElement } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';
import type { Quantity } from '../quantity/quantity.ts';

/** A beam where a stretch begins; both axes, waist positions counted from there. */
export interface BeamHere {
  readonly x: GaussianBeam;
  readonly y: GaussianBeam;
}

/** The free way from one part, or the laser's exit, to the next. */
export interface Stretch {
  /** Index in the path of the part it begins at; `null`: the laser's exit. */
  readonly index: number | null;
  readonly part: Exclude<PathElement, { kind: 'space' }> | null;
  /** From the laser's exit, m. */
  readonly position: number;
  readonly beam: BeamHere;
}

/** The free beam as far as the collimator's lens or, without one, the facet. */
export interface FreeBeam {
  readonly stretches: readonly [Stretch, ...Stretch[]];
  /** Where it arrives at the lens or the facet. */
  readonly arrival: BeamHere;
  readonly pathLength: number;
  /** Of the collimator at the laser's wavelength, m; `null` without one. */
  readonly focalLength: number | null;
}

/** Three ways the bench could be: as stated, the beam wide and so hardly spreading, and narrow and so on strong terms with a lens. */
export type BenchView = 'stated' | 'hardly spreading' | 'narrow';

/** Follows the light in one view of the bench. @throws {OutOfRange} where a glass or a beam leaves its range */
export function freeBeam(launch: Launch, view: BenchView): FreeBeam {
  const draw = viewOf(launch, view);
  const first = laserBeam(launch, draw);
  let beam: BeamHere = { x: first.x, y: first.y };
  // what the next lens gets, while `beam` is as the last one could send it
  let onward = beam;
  let doubt = 0;
  let position = 0;
  const stretches: [Stretch, ...Stretch[]] = [{ index: null, part: null, position, beam }];
  launch.path.forEach((element, index) => {
    if (element.kind === 'space') {
      const length = draw.at(element.length);
      position += length;
      beam = { x: ahead(beam.x, length), y: ahead(beam.y, length) };
      onward = { x: ahead(onward.x, length), y: ahead(onward.y, length) };
      doubt += halfDoubt(element.length);
      return;
    }
    if (element.kind === 'lens') {
      const focalLength = draw.at(element.focalLength);
      const arriving = onward;
      onward = { x: waistBehindLens(arriving.x, focalLength), y: waistBehindLens(arriving.y, focalLength) };
      const focus = (axis: GaussianBeam) => straightest(axis, element.focalLength, doubt);
      beam = view === 'hardly spreading' ? { x: focus(arriving.x), y: focus(arriving.y) } : onward;
      doubt = halfDoubt(element.focalLength);
    }
    stretches.push({ index, part: element, position, beam });
  });
  const { collimator } = launch;
  return {
    stretches,
    arrival: beam,
    pathLength: position,
    focalLength:
      collimator === null ? null : focalLengthFor(collimator, draw.at(launch.laser.wavelength), draw),
  };
}

/** Half of the 90 % range, in the entry's unit. */
function halfDoubt(entry: Quantity): number {
  const { low, high } = intervalOf(entry, 0.9);
  return (high - low) / 2;
}

/**
 * The beam behind a lens on the way, of which focal length and distance may be a little off: as they make it spread least. A
 * telescope that is written down a little out of step may stand right, and then carries farthest.
 *
 * @param doubt of the way from the lens before and of that lens's focal length, m, either way
 */
function straightest(axis: GaussianBeam, focalLength: Quantity, doubt: number): GaussianBeam {
  const { low, high } = intervalOf(focalLength, 0.9);
  const { value } = focalLength;
  // no doubt turns a lens into one of the other sign
  const ends = [low, high].map((end) => 1 / (Math.sign(end) === Math.sign(value) ? end : value / 2));
  const wave = wavefrontRadiusAt(axis, 0);
  // what leaves straightest has its focus where the wave that arrives has its centre
  const nearest = 1 / Math.min(Math.max(...ends), Math.max(Math.min(...ends), 1 / wave));
  const moved = Math.max(-doubt, Math.min(doubt, nearest - wave));
  return waistBehindLens(ahead(axis, moved), nearest);
}

const ahead = (beam: GaussianBeam, length: number): GaussianBeam => ({
  ...beam,
  waistPosition: beam.waistPosition - length,
});

/**
 * Entries at the ends of their 90 % range that make a hazard worse: a wide waist and a small divergence carry far; a
 * narrow beam and a long focal length reach far behind a focus.
 */
function viewOf(launch: Launch, view: BenchView): Draw {
  const chance = {
    screwHorizontal: 0,
    screwVertical: 0,
    hand: 0,
    bend: 0,
    cladding: 0,
    attenuation: 0,
  };
  if (view === 'stated') return { at: (entry) => entry.value, chance };
  const end = view === 'hardly spreading' ? 'high' : 'low';
  const { beam } = launch.laser;
  const axes = beam.kind === 'round' ? [beam.axis] : [beam.x, beam.y];
  const widths = axes.map((axis) => (axis.kind === 'waist' ? axis.waistDiameter : axis.diameter));
  const spreads = axes.flatMap((axis) => (axis.kind === 'spread' ? [axis.fullDivergence] : []));
  const qualities = axes.map(({ quality }) => quality);
  const places = axes.flatMap((axis) => (axis.kind === 'waist' ? [axis.waistPosition] : []));
  const focal = launch.collimator?.focalLength;
  return {
    chance,
    at: (entry) => {
      const isMoved =
        widths.includes(entry) ||
        spreads.includes(entry) ||
        qualities.includes(entry) ||
        places.includes(entry) ||
        entry === focal;
      if (!isMoved) return entry.value;
      const { low, high } = intervalOf(entry, 0.9);
      // a doubt that would leave nothing of a width leaves its value
      if (widths.includes(entry)) return end === 'high' ? high : low > 0 ? low : entry.value / 2;
      if (spreads.includes(entry)) return low > 0 ? low : entry.value / 10;
      if (qualities.includes(entry)) return Math.max(1, low);
      if (entry === focal) return high;
      return end === 'high' ? high : low;
    },
  };
}

/** Full 1/e² divergences of both axes far away, rad. */
export function divergences({ x, y }: BeamHere): readonly [number, number] {
  return [fullDivergence(x), fullDivergence(y)];
}
