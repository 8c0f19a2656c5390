import { radialField } from '@coreward/optics';
import type { Glance } from '../forecast/glance.ts';
import { suitedRadius } from '../forecast/overlap-causes.ts';
import { type EdgePoint, edgeAlong, edgeAt, type Stretch } from './stretches.ts';

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
  /** 1/e² radius of the spot that suits this fibre, m. */
  readonly suitedRadius: number;
  /** Whether that is LP01's own, or the one that fills core and aperture alike. */
  readonly suits: 'fundamental' | 'all modes';
  /** Intensity of LP01 from the axis outwards, 1 on the axis, radii in m; null where modes are not solved. */
  readonly mode: readonly { readonly radius: number; readonly intensity: number }[] | null;
}

/** Steps of the curves that are drawn. */
const steps = 32;

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
      : edgeAlong(lastOf(last, reach), steps).map(({ position, ...radii }) => ({
          position: position - last.to,
          ...radii,
        }));
  const lp01 = taker.fundamentalSet?.modes[0];
  return {
    edge,
    reach,
    spotRadiusX: spot.radiusX,
    spotRadiusY: spot.radiusY,
    offsetX: aim.offsetX,
    offsetY: aim.offsetY,
    coreRadius,
    claddingRadius: launch.fibre.claddingDiameter.value / 2,
    suitedRadius: suited,
    suits: taker.suits,
    mode:
      lp01 === undefined
        ? null
        : Array.from({ length: steps + 1 }, (_, i) => {
            const rho = (2.5 * i) / steps;
            return {
              radius: rho * coreRadius,
              intensity: (radialField(lp01, rho) / radialField(lp01, 0)) ** 2,
            };
          }),
  };
}

/** The end of a stretch, so long. */
function lastOf({ from, to, beam }: Stretch, length: number): Stretch {
  const start = Math.max(from, to - length);
  const on = start - from;
  return {
    from: start,
    to,
    beam: {
      ...beam,
      x: { ...beam.x, waistPosition: beam.x.waistPosition - on },
      y: { ...beam.y, waistPosition: beam.y.waistPosition - on },
    },
  };
}
