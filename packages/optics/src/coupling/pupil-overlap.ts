import { spectrum } from '../fibre/guided-mode.ts';
import { type GaussianField, logNormalisation, spectrumOf } from './gaussian-field.ts';
import type { ModeSet } from './mode-set.ts';
import { pupilGrid } from './overlap-grids.ts';
import { projectPolar } from './polar-overlap.ts';
import { aberrationPhase, aberrationRate, type Pupil } from './pupil.ts';

/**
 * Overlap of a field that has passed a stopped or aberrated lens with every mode, taken in the lens's pupil: there the
 * field is Gaussian again and a mode is its far field. Amplitudes as in {@link climbLadder}, of the power that arrives
 * at the lens (what the stop takes is missing).
 *
 * Valid in the Debye picture: Fresnel number of the stop ≫ 1, paraxial light.
 *
 * @param field what an unstopped, perfect lens would make at the facet, in core radii
 * @param waveNumber k·a
 * @source R. E. Wagner and W. J. Tomlinson, Appl. Opt. 21, 2671 (1982), the approach (from memory)
 */
export function projectThroughPupil(
  set: ModeSet,
  field: GaussianField,
  pupil: Pupil,
  waveNumber: number,
  amplitudes: Float64Array,
  fineness: number,
): void {
  const overQ = spectrumOf(field);
  const stop = pupil.stop * waveNumber;
  const rate = (q: number) => aberrationRate(pupil, q / waveNumber) / waveNumber;
  if (pupil.axisTiltX === 0 && pupil.axisTiltY === 0) {
    const grid = pupilGrid(set, overQ, stop, rate, fineness);
    projectPolar(
      {
        field: overQ,
        grid,
        table: set.spectra(grid),
        modes: set.modes,
        fineness,
        radialPhase: (q) => aberrationPhase(pupil, q / waveNumber),
      },
      amplitudes,
    );
    return;
  }
  projectTilted(set, overQ, pupil, waveNumber, amplitudes, fineness);
}

/** The lens looks past the fibre's axis: rings about the lens's axis, modes evaluated point by point. */
function projectTilted(
  set: ModeSet,
  overQ: GaussianField,
  pupil: Pupil,
  waveNumber: number,
  amplitudes: Float64Array,
  fineness: number,
): void {
  const axisX = pupil.axisTiltX * waveNumber;
  const axisY = pupil.axisTiltY * waveNumber;
  const shifted = movedBy(overQ, axisX, axisY);
  const grid = pupilGrid(
    set,
    shifted,
    pupil.stop * waveNumber,
    (q) => aberrationRate(pupil, q / waveNumber) / waveNumber,
    fineness,
  );
  const lnN = logNormalisation(shifted);
  const angles = 160;
  for (let ring = 0; ring < grid.nodes.length; ring += 1) {
    const q = grid.nodes[ring]!;
    const extra = aberrationPhase(pupil, q / waveNumber);
    for (let j = 0; j < angles; j += 1) {
      const x = q * Math.cos((2 * Math.PI * j) / angles);
      const y = q * Math.sin((2 * Math.PI * j) / angles);
      const { mxxRe, mxxIm, mxyRe, mxyIm, myyRe, myyIm, bxRe, bxIm, byRe, byIm } = shifted;
      const logSize = lnN - (mxxRe * x * x + 2 * mxyRe * x * y + myyRe * y * y) + bxRe * x + byRe * y;
      if (logSize < -34) continue;
      const phase = bxIm * x + byIm * y - (mxxIm * x * x + 2 * mxyIm * x * y + myyIm * y * y) + extra;
      const size = (Math.exp(logSize) * grid.weights[ring]! * Math.sqrt(2 * Math.PI)) / angles;
      const fromFibre = Math.hypot(x + axisX, y + axisY);
      const bearing = Math.atan2(y + axisY, x + axisX);
      set.modes.forEach((mode, i) => {
        const radial = size * spectrum(mode, fromFibre);
        const up = phase - mode.l * bearing;
        const down = phase + mode.l * bearing;
        const s = 4 * i;
        amplitudes[s] = amplitudes[s]! + radial * Math.cos(up);
        amplitudes[s + 1] = amplitudes[s + 1]! + radial * Math.sin(up);
        amplitudes[s + 2] = amplitudes[s + 2]! + radial * Math.cos(down);
        amplitudes[s + 3] = amplitudes[s + 3]! + radial * Math.sin(down);
      });
    }
  }
}

/** The same field written about another origin. */
function movedBy(field: GaussianField, x: number, y: number): GaussianField {
  return {
    ...field,
    bxRe: field.bxRe - 2 * (field.mxxRe * x + field.mxyRe * y),
    bxIm: field.bxIm - 2 * (field.mxxIm * x + field.mxyIm * y),
    byRe: field.byRe - 2 * (field.mxyRe * x + field.myyRe * y),
    byIm: field.byIm - 2 * (field.mxyIm * x + field.myyIm * y),
  };
}
