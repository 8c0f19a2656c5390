import { gaussLegendreOn } from '../numerics/gauss-legendre.ts';
import { OutOfRange } from '../out-of-range.ts';
import { fillRadialTables, type GuidedMode } from './guided-mode.ts';
import { orientations } from './lp-mode.ts';

/** How far light in a random mix of modes lies off the core's axis and how far it points off it: rms, one axis. */
export interface ModeWander {
  /** Of the centroid at the facet, in core radii. */
  readonly centroid: number;
  /** Of the mean transverse wave number times the core radius, ⟨qa⟩; over ka it is the mean angle outside, rad. */
  readonly transverse: number;
}

/** More modes than this make speckle, and nobody takes the centroid of it for the axis. */
export const mostWanderingModes = 60;

/**
 * The wander of a random mix of all these modes: every orientation and one polarisation has a complex amplitude drawn
 * alike, so that the mix changes wholly whenever the fibre is moved. Zero for LP01 alone.
 *
 * Each mode has its centroid on the axis; only cross terms of l and l ± 1 lie off it. Of those, place and wave number
 * differ by the modes' u² alone: [−∇², x] = −2 ∂/∂x. Light of both polarisations mixed alike wanders √½ to 1 as far.
 *
 * @param modes all of one fibre at one V, as from `stepModes` or `gradedModes`; at most 60
 * @throws {OutOfRange} for more
 * @source the mean square of ⟨c|M|c⟩ over random unit vectors of n amplitudes is tr M²/(n(n + 1)) for tr M = 0: second moments of
 *   the unit sphere (from memory); checked by drawing mixes on a grid, `scripts/mode_wander_reference.py`
 */
export function modeWander(modes: readonly GuidedMode[]): ModeWander {
  if (modes.length === 0 || modes.length > mostWanderingModes) {
    throw new OutOfRange({
      where: 'modeWander modes',
      what: `${modes.length} is outside 1 … ${mostWanderingModes}`,
      mend: `Ask for a fibre of at most ${mostWanderingModes} LP modes; of more, light is speckle.`,
    });
  }
  const { nodes, weights, fields } = radialFields(modes);
  let places = 0;
  let wavenumbers = 0;
  for (const [i, low] of modes.entries()) {
    for (const [j, high] of modes.entries()) {
      if (high.l !== low.l + 1) continue;
      let moment = 0;
      for (let n = 0; n < nodes.length; n++) {
        moment +=
          weights[n]! * nodes[n]! ** 2 * fields[i * nodes.length + n]! * fields[j * nodes.length + n]!;
      }
      // over the azimuth ∫cos lφ cos φ cos (l+1)φ, cosines and sines, each pair both ways round: 1 in all
      places += moment ** 2;
      wavenumbers += (((low.u ** 2 - high.u ** 2) / 2) * moment) ** 2;
    }
  }
  const count = modes.reduce((sum, mode) => sum + orientations(mode), 0);
  const mixes = count * (count + 1);
  return { centroid: Math.sqrt(places / mixes), transverse: Math.sqrt(wavenumbers / mixes) };
}

/** All modes on one set of radii, out to where even the widest has decayed. */
function radialFields(modes: readonly GuidedMode[]) {
  const slowest = modes.reduce((least, { w }) => Math.min(least, w), Number.POSITIVE_INFINITY);
  const end = 1 + 45 / slowest;
  const panels = [gaussLegendreOn(0, 1, 80)];
  for (let low = 1; low < end; ) {
    // amplitudes of the best bound mode fall within 1/V
    const high = Math.min(end, low + Math.min(0.7 * low, 8 / modes[0]!.vNumber));
    panels.push(gaussLegendreOn(low, high, 16));
    low = high;
  }
  const nodes = Float64Array.from(panels.flatMap((panel) => [...panel.nodes]));
  const weights = Float64Array.from(panels.flatMap((panel) => [...panel.weights]));
  const fields = new Float64Array(nodes.length * modes.length);
  fillRadialTables(modes, nodes, fields);
  return { nodes, weights, fields };
}
