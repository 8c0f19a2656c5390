import { gradedModes, modeWander, mostWanderingModes, stepModes, stepVRange } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';

/** What the fibre does to reference light that is sent backwards. */
export interface ReverseLight {
  /** LP modes it guides; null: more than the wander is reckoned for, which is speckle. */
  readonly modes: number | null;
  /** Rms wander of the beam, one axis: of its place at the focal plane (m) and its direction (rad). */
  readonly wander: { readonly offset: number; readonly angle: number };
}

/** V above which a fibre has more modes than a wander is reckoned for; counted, they are too many from about there on. */
const speckleAbove = 22;

/**
 * How far the reverse spot may lie from the fibre's own axis: light in several modes wanders whenever the fibre is moved.
 * Null without a reference source.
 *
 * @param focalLength of the collimator, m; it turns a place at the facet into a direction and a direction into a place
 */
export function reverseLight({ fibre, reference }: Launch, focalLength: number): ReverseLight | null {
  if (reference === null) return null;
  const coreRadius = fibre.coreDiameter.value / 2;
  const wavenumber = (2 * Math.PI) / reference.wavelength.value;
  const vNumber = wavenumber * coreRadius * fibre.numericalAperture.value;
  const still = { offset: 0, angle: 0 };
  if (vNumber > speckleAbove) return { modes: null, wander: still };
  if (vNumber < stepVRange.least) return { modes: 1, wander: still };
  const modes = fibre.profile === 'step' ? stepModes(vNumber) : gradedModes(vNumber);
  if (modes.length > mostWanderingModes) return { modes: null, wander: still };
  const { centroid, transverse } = modeWander(modes);
  return {
    modes: modes.length,
    wander: {
      offset: (focalLength * transverse) / (wavenumber * coreRadius),
      angle: (centroid * coreRadius) / focalLength,
    },
  };
}
