import type { FacetBeam } from '@coreward/optics';
import { type Draw, fingerMotion } from './draw.ts';
import type { Arrival, ScrewLever } from './way-to-the-facet.ts';

/** The lens before the facet. */
export interface MeetingLens {
  readonly focalLength: number;
  /** Half aperture, m; Infinity: not known. */
  readonly stopRadius: number;
}

/** How far the beam's axis is off the fibre's at the facet: m, and rad. */
export interface Aimed {
  readonly offsetX: number;
  readonly offsetY: number;
  readonly tiltX: number;
  readonly tiltY: number;
}

/** Screws taken for granted where the launch names none with a mount: near mirror 100 mm before the lens. */
export const assumedLever = { distance: 0.1, lever: 0.038, pitch: 0.00025, incidence: Math.PI / 4 } as const;

/** Offset and tilt at the facet, `distance` behind the lens, that a tilt of one mirror axis makes; a rad of tilt. */
export function leverAtFacet(
  { offsetPerTilt, slopePerTilt }: Pick<ScrewLever, 'offsetPerTilt' | 'slopePerTilt'>,
  lens: MeetingLens | null,
  distance: number,
): { readonly offset: number; readonly tilt: number } {
  const tilt = lens === null ? slopePerTilt : slopePerTilt - offsetPerTilt / lens.focalLength;
  return { offset: offsetPerTilt + distance * tilt, tilt };
}

/** The two screws of the near mirror, or the ones taken for granted. */
export function nearScrews(arrival: Arrival): {
  readonly horizontal: ScrewLever;
  readonly vertical: ScrewLever;
  readonly assumed: boolean;
} {
  const near = arrival.levers.at(-1)?.mirror;
  const horizontal = arrival.levers.find(({ mirror, axis }) => mirror === near && axis === 'horizontal');
  const vertical = arrival.levers.find(({ mirror, axis }) => mirror === near && axis === 'vertical');
  if (horizontal !== undefined && vertical !== undefined) return { horizontal, vertical, assumed: false };
  const assumed = (axis: 'horizontal' | 'vertical', slope: number): ScrewLever => ({
    mirror: 'assumed',
    axis,
    offsetPerTilt: slope * assumedLever.distance,
    slopePerTilt: slope,
    tiltPerTurn: assumedLever.pitch / assumedLever.lever,
  });
  return {
    horizontal: assumed('horizontal', 2),
    vertical: assumed('vertical', 2 * Math.cos(assumedLever.incidence)),
    assumed: true,
  };
}

/** What of a meeting says how its screws move the spot. */
export interface ArrivingAtFacet {
  readonly arrival: Arrival;
  readonly lens: MeetingLens | null;
  readonly beam: FacetBeam;
  /** From the lens to the facet, m; null: where the beam is narrowest. */
  readonly setDistance: number | null;
}

/** What the hand leaves when the near mirror's screws have been peaked. */
export function leftByHand(meeting: ArrivingAtFacet, { chance }: Draw): Aimed {
  const { horizontal, vertical } = nearScrews(meeting.arrival);
  const turns = fingerMotion(chance.hand);
  const distance = meeting.setDistance ?? (meeting.beam.waistZX + meeting.beam.waistZY) / 2;
  const x = leverAtFacet(horizontal, meeting.lens, distance);
  const y = leverAtFacet(vertical, meeting.lens, distance);
  const tiltX = horizontal.tiltPerTurn * turns * chance.screwHorizontal;
  const tiltY = vertical.tiltPerTurn * turns * chance.screwVertical;
  return {
    offsetX: x.offset * tiltX,
    tiltX: x.tilt * tiltX,
    offsetY: y.offset * tiltY,
    tiltY: y.tilt * tiltY,
  };
}
