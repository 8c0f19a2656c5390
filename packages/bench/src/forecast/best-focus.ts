import { brentMinimum, type FacetBeam } from '@coreward/optics';
import { roundBeam, type Taker } from './fibre-taker.ts';
import type { Meeting } from './meeting.ts';

/** What a search for the best focus must know of a meeting. */
export type Focused = Pick<Meeting, 'beam' | 'widening' | 'wavelength' | 'coreRadius' | 'numericalAperture'>;

/**
 * Distance behind the lens (or behind the end of the path) at which the fibre takes most, m; quick and nearly right.
 *
 * For a few-moded fibre its fundamental is taken as the Gaussian that fits it best: both axes want their waist at the
 * facet, and each pulls by how fast it spreads. For many modes the spot with the least mean square radius wins.
 */
export function quickBestDistance(meeting: Focused, taker: Taker): number {
  const { waistZX, waistZY } = meeting.beam;
  if (waistZX === waistZY) return waistZX;
  const { beam, wavelength, coreRadius } = meeting;
  const spread = (m2: number, waist: number) => ((m2 * wavelength) / (2 * Math.PI * waist)) ** 2;
  const angleX = spread(beam.m2X, beam.waistRadiusX);
  const angleY = spread(beam.m2Y, beam.waistRadiusY);
  if (taker.bestRadius === null || taker.suits === 'all modes') {
    return (angleX * waistZX + angleY * waistZY) / (angleX + angleY);
  }
  const mode = taker.bestRadius * coreRadius;
  const modeAngle = spread(1, mode);
  // ln of the two determinants of the Gaussian overlap, as functions of the defocus
  const axis = (waist: number, angle: number) => ({
    base: ((waist * waist + mode * mode) / 4) * (angle + modeAngle),
    slope: angle * modeAngle,
  });
  const x = axis(beam.waistRadiusX, angleX);
  const y = axis(beam.waistRadiusY, angleY);
  const cost = (z: number) =>
    Math.log(x.base + (waistZX - z) ** 2 * x.slope) + Math.log(y.base + (waistZY - z) ** 2 * y.slope);
  return lowest(cost, Math.min(waistZX, waistZY), Math.max(waistZX, waistZY));
}

/** The lowest place of a function with perhaps two valleys: a coarse look, then Brent in the best valley. */
function lowest(cost: (z: number) => number, low: number, high: number): number {
  const looks = 12;
  let best = low;
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i <= looks; i += 1) {
    const z = low + ((high - low) * i) / looks;
    const value = cost(z);
    if (value < least) {
      least = value;
      best = z;
    }
  }
  const step = (high - low) / looks;
  return brentMinimum(cost, Math.max(low, best - step), Math.min(high, best + step)).x;
}

/** Over how much defocus a coupling into LP01 changes, m: the depths of spot and mode together. */
export function fundamentalDepth({ wavelength, coreRadius }: Focused, { bestRadius }: Taker) {
  const mode = (bestRadius ?? 1) * coreRadius;
  return (waistRadius: number, m2: number): number =>
    (Math.PI * (mode ** 2 + waistRadius ** 2 / m2)) / wavelength;
}

/** The same for all guided light: light at the edge of the aperture crosses the core within the first term. */
export function guidedDepth(meeting: Focused, taker: Taker) {
  if (taker.set?.modes.length === 1) return fundamentalDepth(meeting, taker);
  const { wavelength, coreRadius, numericalAperture } = meeting;
  return (waistRadius: number, m2: number): number =>
    coreRadius / numericalAperture + (Math.PI * waistRadius ** 2) / (m2 * wavelength);
}

/** Whichever the focus is set for: the unit in which a place beside the waist is told, m; of the axis that spreads faster. */
export function focusDepth(meeting: Focused, taker: Taker): number {
  const { waistRadiusX, waistRadiusY, m2X, m2Y } = meeting.beam;
  const depth = depthFor(meeting, taker);
  return Math.min(depth(waistRadiusX, m2X), depth(waistRadiusY, m2Y));
}

/** The same for what the fibre suits best; m, asked with a waist radius in m and its M². */
export const depthFor = (meeting: Focused, taker: Taker) =>
  taker.suits === 'fundamental' ? fundamentalDepth(meeting, taker) : guidedDepth(meeting, taker);

/** The meeting with a round beam of the same size and M² (geometric means of the axes), its waist at distance 0. */
export function roundMeeting(meeting: Meeting): Meeting {
  const { waistRadiusX, waistRadiusY, m2X, m2Y } = meeting.beam;
  const beam = roundBeam(Math.sqrt(waistRadiusX * waistRadiusY), Math.sqrt(m2X * m2Y));
  return { ...meeting, beam, widening: { along: { x: 1, y: 1 }, lab: 1 }, pupil: null };
}

/** Whether both axes of a beam are the same, but for where it points. */
export const isRound = ({ waistRadiusX, waistRadiusY, m2X, m2Y, waistZX, waistZY }: FacetBeam): boolean =>
  waistRadiusX === waistRadiusY && m2X === m2Y && waistZX === waistZY;
