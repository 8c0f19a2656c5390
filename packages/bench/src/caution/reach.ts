/** How far a free beam is above a limit, from where a stretch begins. */
import {
  averageIrradianceFrom1e,
  type Basis,
  type BeamDefinition,
  beamRadiusAt,
  beyondFocusDistanceFrom1e,
  collimatedDistanceFrom1e,
  ellipticDiodeDistanceFrom1e,
  type IrradianceLimit,
  width1eFromWidth1e2,
} from '@coreward/optics';
import { type BeamHere, divergences } from './stretches.ts';

/** A beam that may hit: how far, and how much at the closest. */
export interface Geometry {
  readonly from: string;
  readonly beamDefinition: BeamDefinition;
  /** Distance, m, up to where light of this power (W) is above the limit; that it is above at all is asked before. */
  readonly asStated: (power: number, limit: IrradianceLimit) => Reached;
  readonly atWorst: (power: number, limit: IrradianceLimit) => Reached;
  /** Irradiance, W/m², over the limit's stop for the closest eye. */
  readonly closest: (power: number, limit: IrradianceLimit) => number;
}

/** Up to where light is above a limit, m, and what that rests on. */
export interface Reached {
  readonly distance: number;
  readonly basis: readonly Basis[];
}

/** The longest of several. */
export function longestOf(first: Reached, ...others: readonly Reached[]): Reached {
  return others.reduce((longest, one) => (one.distance > longest.distance ? one : longest), first);
}

/** Light that may be met in several places: the farthest and the most of any of them. */
export function worstOf(from: string, places: readonly [Geometry, ...Geometry[]]): Geometry {
  const [first, ...others] = places;
  return {
    from,
    beamDefinition: first.beamDefinition,
    asStated: (power, limit) =>
      longestOf(first.asStated(power, limit), ...others.map((one) => one.asStated(power, limit))),
    atWorst: (power, limit) =>
      longestOf(first.atWorst(power, limit), ...others.map((one) => one.atWorst(power, limit))),
    closest: (power, limit) => Math.max(...places.map((one) => one.closest(power, limit))),
  };
}

/** A free beam, in the views of the bench in which it could reach farthest. */
export function beamGeometry(from: string, stated: BeamHere, ...worse: readonly BeamHere[]): Geometry {
  return {
    from,
    beamDefinition: '1/e',
    asStated: (power, limit) => beamReach(stated, power, limit),
    atWorst: (power, limit) =>
      longestOf(beamReach(stated, power, limit), ...worse.map((beam) => beamReach(beam, power, limit))),
    closest: (power, limit) =>
      Math.max(...[stated, ...worse].map((beam) => irradianceOf(beam, power, limit))),
  };
}

/**
 * A beam that may still converge: to its farther waist, and from there as a beam of that waist. An elliptic one counts as
 * though it began at a point, which never is the shorter.
 */
function beamReach(beam: BeamHere, power: number, limit: IrradianceLimit): Reached {
  const { distance, basis } = reachFromWaist(beam, power, limit);
  const toWaist = Math.max(0, beam.x.waistPosition, beam.y.waistPosition);
  // nowhere above the limit stays nowhere
  return { distance: distance === 0 ? 0 : toWaist + distance, basis };
}

/** The same counted from its waist, if that lies ahead. */
function reachFromWaist(beam: BeamHere, power: number, limit: IrradianceLimit): Reached {
  const [spreadX, spreadY] = divergences(beam);
  const round = spreadX === spreadY && beam.x.waistPosition === beam.y.waistPosition;
  return round
    ? collimatedDistanceFrom1e({
        power,
        limit,
        exitDiameter1e: width1eFromWidth1e2(2 * narrowest(beam).radiusX),
        fullDivergence1e: width1eFromWidth1e2(spreadX),
      })
    : ellipticDiodeDistanceFrom1e({
        power,
        limit,
        fullDivergenceX1e: width1eFromWidth1e2(spreadX),
        fullDivergenceY1e: width1eFromWidth1e2(spreadY),
      });
}

/** Radii where the beam ahead is narrowest, each axis for itself, m. */
function narrowest({ x, y }: BeamHere): { readonly radiusX: number; readonly radiusY: number } {
  return {
    radiusX: beamRadiusAt(x, Math.max(0, x.waistPosition)),
    radiusY: beamRadiusAt(y, Math.max(0, y.waistPosition)),
  };
}

function irradianceOf(beam: BeamHere, power: number, limit: IrradianceLimit): number {
  const { radiusX, radiusY } = narrowest(beam);
  // the round beam of the same area; exact for a round one, and within a tenth where the stop cuts an ellipse
  const diameter = width1eFromWidth1e2(2 * Math.min(radiusX, radiusY));
  return averageIrradianceFrom1e(power, diameter, limit.averagingDiameter);
}

/** What spreads behind the focus of a lens: by the lens formula and by the beam itself, the longer. */
export function focusGeometry(
  views: readonly [FocusView, ...FocusView[]],
  lens: { readonly clearAperture: number | null },
): Geometry {
  const reach = (view: FocusView, power: number, limit: IrradianceLimit): Reached => {
    const { radiusX, radiusY } = view.onLens;
    const widest = 2 * Math.sqrt(radiusX * radiusY);
    const onLens = lens.clearAperture === null ? widest : Math.min(widest, lens.clearAperture);
    const byLens = beyondFocusDistanceFrom1e({
      power,
      limit,
      focalLength: Math.abs(view.focalLength),
      diameterOnLens1e: width1eFromWidth1e2(onLens),
    });
    return longestOf(byLens, reachFromWaist(view.behind, power, limit));
  };
  const [stated, ...worse] = views;
  return {
    from: 'the focus',
    beamDefinition: '1/e',
    asStated: (power, limit) => reach(stated, power, limit),
    atWorst: (power, limit) =>
      longestOf(reach(stated, power, limit), ...worse.map((view) => reach(view, power, limit))),
    // a focus is narrower than any stop
    closest: (power, limit) => power / ((Math.PI / 4) * limit.averagingDiameter ** 2),
  };
}

/** A beam behind a lens with nothing in its focus. */
export interface FocusView {
  readonly focalLength: number;
  /** 1/e² radii on the lens, m. */
  readonly onLens: { readonly radiusX: number; readonly radiusY: number };
  readonly behind: BeamHere;
}
