import { brentMinimum, type FacetBeam } from '@coreward/optics';
import { beamAt, type Meeting } from './meeting.ts';

/** What the search asks: the share of a beam, right to about `tolerance`. */
export type ShareOf = (beam: FacetBeam, tolerance: number) => number;

/** What the search must know of a meeting. */
export type Searched = Pick<Meeting, 'beam' | 'widening' | 'pupil' | 'wavelength'>;

/**
 * Where beside a waist to look, in depths. A spot smaller than the mode may be met best where it has spread: the beam's
 * rings then meet the mode's flat top and long tails better than its waist does. The fundamental of a step has its place
 * within half a depth (measured for V from 0.8 to 15); the rest is for astigmatism, which adds valleys of its own.
 */
const besides = [0.08, 0.16, 0.24, 0.33, 0.43, 0.55, 0.7, 0.9, 1.2, 1.6, 2.2] as const;

/** Looks between two waists, and between the paraxial and the marginal focus. */
const looksBetween = 12;

/** Error asked of a share at a look. */
const looking = 1e-3;

/** A valley so much less deep than the deepest look may still be the deepest: it is followed to its floor as well. */
const rival = { share: 0.03, error: 2 * looking } as const;

/**
 * Distance of the facet behind the lens (or behind the end of the path) at which `share` is greatest, m.
 *
 * Looks over more than two depths on both sides of both waists and, with an aberration, out to the marginal focus, then
 * finishes with Brent's search in the deepest valleys. A beam whose waists coincide is met as well before them as behind;
 * of two equal places the one behind is taken, farther from the lens: there the tip keeps clear of the lens, and light
 * that is not guided spreads instead of focusing inside the glass. A place beside the waist must gain more than the error
 * of the shares.
 *
 * @param depth over how much defocus the coupling of a beam of this waist radius (m) and M² changes, m
 */
export function mostLightAt(
  searched: Searched,
  depth: (waistRadius: number, m2: number) => number,
  share: ShareOf,
): number {
  const { beam, pupil } = searched;
  const { waistZX, waistZY, m2X, m2Y } = beam;
  const aberration = marginalShift(searched);
  const mirrored = waistZX === waistZY && aberration === 0;
  const depths = [depth(beam.waistRadiusX, m2X), depth(beam.waistRadiusY, m2Y)] as const;
  // many members or a lens's pupil make a share dear, and smooth
  const fine = errorOnTheFloor(Math.max(m2X, m2Y), pupil !== null);
  const at = (distance: number, tolerance: number) => share(beamAt(searched, distance, null), tolerance);

  const places = [
    ...about(waistZX, depths[0], mirrored),
    ...about(waistZY, depths[1], mirrored),
    ...(mirrored ? [] : evenly(Math.min(waistZX, waistZY), Math.max(waistZX, waistZY))),
    // marginal rays focus so far from the paraxial focus; the best place lies about half-way
    ...(aberration === 0 ? [] : [waistZX, waistZY].flatMap((z) => evenly(z, z + 1.2 * aberration))),
  ].sort((a, b) => b - a);
  const distances = places.filter((z, i) => i === 0 || places[i - 1]! - z > 1e-3 * Math.min(...depths));
  const seen = distances.map((distance) => ({ distance, share: at(distance, looking) }));
  const top = Math.max(...seen.map((one) => one.share));

  const followed = top * (1 - rival.share) - rival.error;
  let best = { distance: waistZX, share: mirrored ? at(waistZX, fine) + fine : -1 };
  seen.forEach((here, i) => {
    const before = seen[i - 1];
    const after = seen[i + 1];
    if (here.share < followed) return;
    if ((before?.share ?? 0) > here.share || (after?.share ?? 0) >= here.share) return;
    const high = before?.distance ?? here.distance;
    const low = after?.distance ?? here.distance;
    if (low === high) return;
    const found = brentMinimum((z) => -at(z, fine), low, high, 2e-4 * Math.min(...depths));
    // places come from behind: one nearer the lens must be truly better
    if (-found.value > best.share + fine / 10) best = { distance: found.x, share: -found.value };
  });
  return best.distance;
}

/** Error asked of a share on a valley's floor. */
function errorOnTheFloor(m2: number, throughPupil: boolean): number {
  return m2 > 1 || throughPupil ? 2e-5 : 1e-6;
}

function about(waist: number, depth: number, onlyBehind: boolean): readonly number[] {
  return [0, ...besides].flatMap((by) =>
    onlyBehind || by === 0 ? [waist + by * depth] : [waist + by * depth, waist - by * depth],
  );
}

function evenly(from: number, to: number): readonly number[] {
  return Array.from({ length: looksBetween - 1 }, (_, i) => from + ((to - from) * (i + 1)) / looksBetween);
}

/** Where marginal rays focus, from the paraxial focus, m: negative is nearer the lens. */
export function marginalShift({ pupil, wavelength }: Pick<Meeting, 'pupil' | 'wavelength'>): number {
  if (pupil === null || pupil.sphericalAberration === 0) return 0;
  return (-4 * pupil.sphericalAberration * wavelength) / pupil.aberrationAt ** 2;
}
