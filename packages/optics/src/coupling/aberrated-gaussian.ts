import { gaussLegendre } from '../numerics/gauss-legendre.ts';

/** What meets in the pupil: 1/e² half angles of beam and mode, the stop, and W040. Angles as direction sines. */
export interface AberratedMeeting {
  readonly beamAngle: number;
  readonly modeAngle: number;
  readonly stop: number;
  /** W040 in waves at the direction `aberrationAt`. */
  readonly sphericalAberration: number;
  readonly aberrationAt: number;
}

/**
 * What stop and spherical aberration leave of the coupling of a centred round Gaussian into a Gaussian mode, at the best
 * focus: 1 for a perfect, open lens. An estimate for ranking: beam and mode are Gaussians, M² is left out; against the
 * pupil integral with true LP01 modes it is within 0.02 for V between 2 and 3 (measured: 0.014 at worst).
 *
 * @source as `truncatedGaussianCoupling`, with the phase exp(−2πiW) under the integral (elementary)
 */
export function aberratedGaussianEstimate(meeting: AberratedMeeting): number {
  const { beamAngle, modeAngle, stop, sphericalAberration, aberrationAt } = meeting;
  const decay = 1 / beamAngle ** 2 + 1 / modeAngle ** 2;
  // t = decay·θ²: the plain integral is ∫e^{−t}dt = 1; beyond t = 18 nothing is left
  const end = Math.min(18, decay * stop * stop);
  const waves = sphericalAberration / (decay * aberrationAt * aberrationAt) ** 2; // at t = 1
  const count = Math.min(200, Math.ceil(16 + 8 * Math.abs(waves) * Math.min(end, 6) ** 2 * 0.6));
  const rule = gaussLegendre(count);
  const share = (defocus: number): number => {
    let re = 0;
    let im = 0;
    for (let i = 0; i < count; i += 1) {
      const t = (end / 2) * (1 + rule.nodes[i]!);
      const size = (end / 2) * rule.weights[i]! * Math.exp(-t);
      const phase = -2 * Math.PI * waves * t * t + defocus * t;
      re += size * Math.cos(phase);
      im += size * Math.sin(phase);
    }
    return re * re + im * im;
  };
  if (waves === 0) return share(0);
  // the best focus makes up for the slope of the aberration somewhere between the axis and a few decay lengths
  const full = 2 * Math.PI * waves * 6;
  let best = 0;
  let place = 0;
  for (let i = 0; i <= 10; i += 1) {
    const value = share((full * i) / 10);
    if (value > best) {
      best = value;
      place = i;
    }
  }
  for (const step of [0.5, 0.25, 0.12, 0.06]) {
    for (const tried of [place - step, place + step]) {
      const value = share((full * tried) / 10);
      if (value > best) {
        best = value;
        place = tried;
      }
    }
  }
  return best;
}
