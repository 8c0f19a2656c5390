import { type FacetBeam, mustBeFacetBeam } from '../beam/facet-beam.ts';
import { mustBePositive } from '../out-of-range.ts';
import { fieldOf, footprintOf } from './gaussian-field.ts';
import { laguerreGauss } from './laguerre-gauss.ts';
import { modePower, projectPolar } from './polar-overlap.ts';
import { radialGrid, roundedCount } from './radial-grid.ts';
import { inUnitsOf } from './scaled-beam.ts';

/**
 * Power of a coherent beam in the first `groups` mode groups of the infinite parabola, from group 1 (the fundamental).
 *
 * The modes are Laguerre-Gauss functions of radius `modeRadius`; group g holds those with 2p + l + 1 = g. Valid for
 * M² = 1; the truncated parabola of a real fibre differs for groups near cut-off.
 *
 * @param modeRadius 1/e² radius of the fundamental, m: √(2a/(k·NA))
 * @source D. Marcuse, Light Transmission Optics (1972), modes of the square-law medium (from memory)
 */
export function parabolaGroupPowers(
  beam: FacetBeam,
  modeRadius: number,
  wavelength: number,
  groups: number,
): readonly number[] {
  mustBeFacetBeam(beam, 'parabolaGroupPowers');
  mustBePositive(modeRadius, 'parabolaGroupPowers modeRadius', 'a mode radius');
  const field = fieldOf(inUnitsOf(modeRadius, beam), (2 * Math.PI * modeRadius) / wavelength);
  const { x, y, radius } = footprintOf(field);
  // the highest group turns back at √(groups); 4.5 more waists of decay leave e⁻²⁰ of its amplitude
  const outer = Math.min(Math.hypot(x, y) + 5.2 * radius, Math.sqrt(groups) + 4.5);
  const waves =
    outer *
    (Math.hypot(field.bxIm, field.byIm) + 2 * Math.hypot(field.mxxIm, field.myyIm, field.mxyIm) * outer);
  const grid = radialGrid(
    [0, outer],
    [roundedCount(40 + 0.6 * waves + 2.2 * Math.sqrt(groups) * outer + (3 * outer) / radius)],
  );
  const rings = grid.nodes.length;
  const modes: { readonly l: number; readonly group: number }[] = [];
  const tables: Float64Array[] = [];
  for (let l = 0; l < groups; l += 1) {
    const radialOrders = Math.floor((groups - 1 - l) / 2) + 1;
    tables.push(laguerreGauss(1, l, radialOrders, grid.nodes));
    for (let p = 0; p < radialOrders; p += 1) modes.push({ l, group: 2 * p + l + 1 });
  }
  const table = new Float64Array(modes.length * rings);
  let at = 0;
  for (const part of tables) {
    table.set(part, at);
    at += part.length;
  }
  const amplitudes = new Float64Array(4 * modes.length);
  projectPolar({ field, grid, table, modes, fineness: 1 }, amplitudes);
  const powers = new Array<number>(groups).fill(0);
  modes.forEach(({ l, group }, mode) => {
    powers[group - 1] = powers[group - 1]! + modePower(amplitudes, mode, l);
  });
  return powers;
}
