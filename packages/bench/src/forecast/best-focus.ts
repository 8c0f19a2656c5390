import { brentMinimum, type FacetBeam } from '@coreward/optics';
import { type Offer, type Taker, takenByModes } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';

/**
 * Distance behind the lens (or behind the end of the path) at which the fibre takes most, m; quick and nearly right.
 *
 * For a few-moded fibre its fundamental is taken as the Gaussian that fits it best: both axes want their waist at the
 * facet, and each pulls by how fast it spreads. For many modes the spot with the least mean square radius wins.
 */
export function quickBestDistance(meeting: Meeting, taker: Taker): number {
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

/**
 * The same with the true modes and the lens's aberration: maximises the fundamental where the fibre is few-moded, else
 * all guided light.
 */
export function exactBestDistance(
  meeting: Meeting,
  taker: Taker,
  share: (beam: FacetBeam) => number,
): number {
  const quick = quickBestDistance(meeting, taker);
  const aberrated = meeting.pupil !== null && meeting.pupil.sphericalAberration !== 0;
  const { waistZX, waistZY } = meeting.beam;
  if (!aberrated && waistZX === waistZY) return quick;
  const between = [Math.min(waistZX, waistZY), Math.max(waistZX, waistZY)] as const;
  const shift = aberrated ? marginalShift(meeting) : 0;
  // marginal rays focus `shift` away from the paraxial focus; the best place lies about half-way
  const low = between[0] + Math.min(0, 1.2 * shift) - 0.05 * Math.abs(shift);
  const high = between[1] + Math.max(0, 1.2 * shift) + 0.05 * Math.abs(shift);
  return lowest((distance) => -share(beamAt(meeting, distance, null)), low, high);
}

/** Where marginal rays focus, from the paraxial focus, m: negative is nearer the lens. */
export function marginalShift({ pupil, wavelength }: Pick<Meeting, 'pupil' | 'wavelength'>): number {
  if (pupil === null || pupil.sphericalAberration === 0) return 0;
  return (-4 * pupil.sphericalAberration * wavelength) / pupil.aberrationAt ** 2;
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

/** The share that the focus is set for: LP01 of a few-moded fibre, all guided light of another. */
export function focusShare(
  taker: Taker,
  offerOf: (beam: FacetBeam) => Offer,
  rays: (offer: Offer) => number,
) {
  const set = taker.suits === 'fundamental' ? taker.fundamentalSet : taker.set;
  return (beam: FacetBeam): number => {
    const offer = offerOf(beam);
    if (set === null) return rays(offer);
    const taken = takenByModes(set, offer, 1e-7);
    return taker.suits === 'fundamental' ? (taken.fundamental ?? 0) : taken.guided;
  };
}
