import type { FacetBeam } from '../beam/facet-beam.ts';
import { gaussHermite } from '../numerics/gauss-hermite.ts';
import type { BeamAim } from './gaussian-field.ts';

/*
 * A Gaussian Schell-model beam is a crowd of coherent Gaussians of the full waist, each tilted at the waist by its own
 * chance angle of rms √(M⁴−1)·λ/(2πw₀). So any coupling of the beam is the mean of coherent couplings over tilts.
 */

/** One coherent member of the crowd: the beam itself, pointing elsewhere, and its share of the power. */
export interface TiltMember extends BeamAim {
  readonly weight: number;
}

interface TiltNodes {
  /** In units of the rms tilt. */
  readonly nodes: ArrayLike<number>;
  readonly weights: ArrayLike<number>;
}

/**
 * Quadrature over one standard normal tilt. `reach` is k·σ·W: how many waves the rms tilt puts across the width W over
 * which beam and mode meet; the coupling as a function of tilt is a band-limited function of that width. Nodes are wanted
 * from `from` to `to`, in units of the rms tilt.
 */
function tiltNodes(reach: number, tolerance: number, from: number, to: number): TiltNodes {
  if (reach === 0) return { nodes: [0], weights: [1] };
  // a forecast's samples need a part in a thousand, and Gauss-Hermite gets there with the fewest nodes
  if (tolerance > 1e-5 && reach < 2.5) return gaussHermite((tolerance > 5e-4 ? 1 : 2) + Math.ceil(3 * reach));
  // Trapezoid: cut where the normal density is below the tolerance; step so that the first alias of the integrand,
  // a Gaussian-like function of width √(W² + 1/(kσ)²) in the conjugate variable, is below it too.
  const cut = Math.sqrt(2 * Math.log(1 / tolerance));
  const step = (2 * Math.PI) / (cut * Math.sqrt(reach * reach + 1));
  const half = Math.ceil(cut / step);
  // what comes in so steeply that no mode takes it only counts in the sum of the weights, √(2π)/step
  const first = Math.max(-half, Math.floor(from / step));
  const last = Math.min(half, Math.ceil(to / step));
  const nodes: number[] = [];
  const weights: number[] = [];
  const sum = Math.sqrt(2 * Math.PI) / step;
  for (let i = first; i <= last; i += 1) {
    const x = i * step;
    const weight = Math.exp((-x * x) / 2);
    nodes.push(x);
    weights.push(weight);
  }
  return { nodes, weights: weights.map((weight) => weight / sum) };
}

/**
 * The coherent members of `beam`. Where the beam has no offset and no tilt, mirror images are left out and their share
 * is given to the one kept: modes do not tell them apart.
 *
 * @param waveNumber 2π/wavelength in the inverse of the beam's unit of length
 * @param meetingRadius 1/e² radius at the waist over which beam and modes can meet, in the beam's unit
 * @param tolerance error of the mean to aim for, as a fraction of the power
 * @param steepest direction sine along either axis beyond which members are not wanted
 * @source A. Starikov and E. Wolf, J. Opt. Soc. Am. 72, 923 (1982) for the model (from memory); the crowd of tilts is
 *   the same model in another representation, checked against the sum of Hermite-Gauss modes
 */
export function tiltMembers(
  beam: FacetBeam,
  waveNumber: number,
  meetingRadius: (waistRadius: number) => number,
  tolerance: number,
  steepest = Number.POSITIVE_INFINITY,
): readonly TiltMember[] {
  if (beam.m2X === 1 && beam.m2Y === 1) {
    const { offsetX, offsetY, tiltX, tiltY } = beam;
    return [{ weight: 1, offsetX, offsetY, tiltX, tiltY }];
  }
  const rmsX = Math.sqrt(beam.m2X ** 2 - 1) / (waveNumber * beam.waistRadiusX);
  const rmsY = Math.sqrt(beam.m2Y ** 2 - 1) / (waveNumber * beam.waistRadiusY);
  const c = Math.cos(beam.azimuth);
  const s = Math.sin(beam.azimuth);
  const ownTiltX = c * beam.tiltX + s * beam.tiltY;
  const ownTiltY = c * beam.tiltY - s * beam.tiltX;
  const nodes = (rms: number, waist: number, tilt: number) =>
    tiltNodes(
      waveNumber * rms * meetingRadius(waist),
      tolerance,
      (-steepest - tilt) / rms,
      (steepest - tilt) / rms,
    );
  const alongX = nodes(rmsX, beam.waistRadiusX, ownTiltX);
  const alongY = nodes(rmsY, beam.waistRadiusY, ownTiltY);
  const centred = beam.offsetX === 0 && beam.offsetY === 0 && beam.tiltX === 0 && beam.tiltY === 0;
  const members: TiltMember[] = [];
  for (let i = 0; i < alongX.nodes.length; i += 1) {
    const x = alongX.nodes[i]!;
    if (centred && x < -1e-12) continue;
    for (let j = 0; j < alongY.nodes.length; j += 1) {
      const y = alongY.nodes[j]!;
      if (centred && y < -1e-12) continue;
      const images = centred ? (Math.abs(x) > 1e-12 ? 2 : 1) * (Math.abs(y) > 1e-12 ? 2 : 1) : 1;
      const weight = images * alongX.weights[i]! * alongY.weights[j]!;
      if (weight < tolerance * (tolerance > 1e-5 ? 1e-2 : 1e-3)) continue; // a few hundred of these stay below the tolerance
      const tiltX = x * rmsX;
      const tiltY = y * rmsY;
      // the tilt pivots about the waist: by the facet, −waistZ downstream of it, the axis has moved sideways too
      const shiftX = -beam.waistZX * tiltX;
      const shiftY = -beam.waistZY * tiltY;
      members.push({
        weight,
        offsetX: beam.offsetX + c * shiftX - s * shiftY,
        offsetY: beam.offsetY + s * shiftX + c * shiftY,
        tiltX: beam.tiltX + c * tiltX - s * tiltY,
        tiltY: beam.tiltY + s * tiltX + c * tiltY,
      });
    }
  }
  return members;
}
