import type { Glance } from '../forecast/glance.ts';
import { suitedRadius } from '../forecast/overlap-causes.ts';
import { cut, type EdgePoint, edgeAlong, edgeAt, type Stretch } from './stretches.ts';

/** The focus at the facet: the light that comes, the core it should hit, and the mode that waits there. SI. */
export interface FocusPicture {
  /** The last of the way, ending at the facet; positions count from the facet, so they are negative. */
  readonly edge: readonly EdgePoint[];
  /** How far before the facet the picture begins, m. */
  readonly reach: number;
  /** 1/e² radii of the spot at the facet, along lab x and y, m. */
  readonly spotRadiusX: number;
  readonly spotRadiusY: number;
  /** Where the spot's centre lies, m from the fibre's axis; what the hand leaves, where the launch is walked. */
  readonly offsetX: number;
  readonly offsetY: number;
  readonly coreRadius: number;
  readonly claddingRadius: number;
  /** Half the side of the picture, m: everything has room in it. */
  readonly half: number;
  /** 1/e² radius of the spot that suits this fibre, m. */
  readonly suitedRadius: number;
  /** Whether that is LP01's own, or the one that fills core and aperture alike. */
  readonly suits: 'fundamental' | 'all modes';
}

/** What is widest fills at most this share of the picture. */
const fill = 1 / 1.35;

/** Steps of the edge that is drawn. */
const steps = 32;

/** The focus at the facet, enlarged: what is drawn of beam, core and aim. */
export function focusPicture(
  { launch, meeting, taker, budget }: Glance,
  stretches: readonly Stretch[],
): FocusPicture {
  const { coreRadius, aim } = meeting;
  const suited = suitedRadius(meeting, taker) * Math.sqrt(meeting.beam.m2X * meeting.beam.m2Y);
  const last = stretches.at(-1);
  const { beamOutside, arrival } = meeting;
  const beam = last?.beam ?? { ...arrival.beam };
  const spot = edgeAt(beam, budget.distance);
  // far enough to see the light come together: to where it is four cores or four spots wide
  const slope = Math.max(
    (beamOutside.m2X * meeting.wavelength) / (Math.PI * beamOutside.waistRadiusX),
    (beamOutside.m2Y * meeting.wavelength) / (Math.PI * beamOutside.waistRadiusY),
  );
  const wide = 4 * Math.max(coreRadius, spot.radiusX, spot.radiusY);
  const reach = Math.min(wide / slope, last === undefined ? wide / slope : last.to - last.from);
  const edge =
    last === undefined
      ? []
      : edgeAlong(cut(last, last.to - reach, last.to), steps).map(({ position, ...radii }) => ({
          position: position - last.to,
          ...radii,
        }));
  return {
    edge,
    reach,
    spotRadiusX: spot.radiusX,
    spotRadiusY: spot.radiusY,
    offsetX: aim.offsetX,
    offsetY: aim.offsetY,
    coreRadius,
    claddingRadius: launch.fibre.claddingDiameter.value / 2,
    half: halfFor(coreRadius, Math.max(suited, spot.radiusX, spot.radiusY)),
    suitedRadius: suited,
    suits: taker.suits,
  };
}

/** In steps of √2 of the core, so that the core keeps its size while a hand moves the spot a little. */
const halfFor = (coreRadius: number, widest: number): number =>
  (coreRadius / fill) * 2 ** (Math.ceil(2 * Math.log2(Math.max(1, widest / coreRadius)) - 1e-9) / 2);
