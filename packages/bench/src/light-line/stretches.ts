import { beamRadiusAt, type GaussianBeam, waistBehindLens } from '@coreward/optics';
import { asStated, type Draw } from '../forecast/draw.ts';
import type { Meeting } from '../forecast/meeting.ts';
import { laserBeam, type TravellingBeam, travelled } from '../forecast/travelling-beam.ts';
import type { Launch } from '../launch/launch.ts';

/** Free way between two places where the beam changes its course, straightened at the mirrors. */
export interface Stretch {
  /** From the laser's exit along the path, m. */
  readonly from: number;
  readonly to: number;
  /** Its waists count from `from`. */
  readonly beam: TravellingBeam;
}

/** The edge of the light at one place of the path: 1/e² radii of intensity along lab x and lab y, m. */
export interface EdgePoint {
  /** From the laser's exit, m. */
  readonly position: number;
  readonly radiusX: number;
  readonly radiusY: number;
}

/**
 * The way of the light from the laser's exit to the facet, lens by lens. The last stretch ends at the facet; its beam is
 * the one that the forecast brings there.
 *
 * @param distance of the facet behind the collimator or, without one, behind the end of the path, m
 */
export function stretchesToTheFacet(
  launch: Launch,
  meeting: Meeting,
  distance: number,
  draw: Draw = asStated,
): readonly Stretch[] {
  const stretches: Stretch[] = [];
  let from = 0;
  let beam = laserBeam(launch, draw);
  let position = 0;
  const change = (to: number, changed: TravellingBeam) => {
    if (to > from) stretches.push({ from, to, beam });
    from = to;
    beam = changed;
  };
  for (const element of launch.path) {
    if (element.kind === 'space') position += draw.at(element.length);
    if (element.kind === 'lens') {
      const focalLength = draw.at(element.focalLength);
      const here = travelled(beam, position - from);
      change(position, {
        ...here,
        x: waistBehindLens(here.x, focalLength),
        y: waistBehindLens(here.y, focalLength),
      });
    }
  }
  const { beamOutside } = meeting;
  const behind = (before: GaussianBeam, waistRadius: number, waistPosition: number) => ({
    ...before,
    waistRadius,
    waistPosition,
  });
  change(position, {
    ...beam,
    x: behind(beam.x, beamOutside.waistRadiusX, beamOutside.waistZX),
    y: behind(beam.y, beamOutside.waistRadiusY, beamOutside.waistZY),
  });
  if (distance > 0) stretches.push({ from: position, to: position + distance, beam });
  return stretches;
}

/** What of a stretch lies between two places, m from the laser's exit. */
export function cut({ from, to, beam }: Stretch, first: number, last: number): Stretch {
  const start = Math.max(from, first);
  return { from: start, to: Math.min(to, last), beam: travelled(beam, start - from) };
}

/** 1/e² radii along the lab's axes, `along` metres from where the beam's waists count, m. A turned ellipse by its widths. */
export function edgeAt(
  { x, y, azimuth }: TravellingBeam,
  along: number,
): { readonly radiusX: number; readonly radiusY: number } {
  const ownX = beamRadiusAt(x, along);
  const ownY = beamRadiusAt(y, along);
  const c = Math.cos(azimuth);
  const s = Math.sin(azimuth);
  return { radiusX: Math.hypot(c * ownX, s * ownY), radiusY: Math.hypot(s * ownX, c * ownY) };
}

/**
 * Points along a stretch, its ends included: even steps, and the waists besides, so that no neck is cut off.
 *
 * @param steps even ones, at least 1
 */
export function edgeAlong({ from, to, beam }: Stretch, steps: number): readonly EdgePoint[] {
  const length = to - from;
  const places = Array.from({ length: steps + 1 }, (_, i) => (length * i) / steps);
  for (const { waistPosition } of [beam.x, beam.y]) {
    if (waistPosition > 0 && waistPosition < length) places.push(waistPosition);
  }
  places.sort((a, b) => a - b);
  return places.map((along) => ({ position: from + along, ...edgeAt(beam, along) }));
}
