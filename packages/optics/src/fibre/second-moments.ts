import { claddingPower } from './cladding-field.ts';
import type { GuidedMode } from './guided-mode.ts';
import { corePanel, momentOver, radialPanels } from './radial-integral.ts';

/** Mean squares of a mode's place and of its transverse wave number, in core radii and their inverse. */
export interface SecondMoments {
  /** ⟨(r/a)²⟩; the D4σ radius of the mode is √(2⟨r²⟩). */
  readonly radiusSquared: number;
  /** ⟨(qa)²⟩; the far field's half angle by second moments is √(2⟨q²⟩)/k. */
  readonly spectrumSquared: number;
}

/** A mode's own, for as long as the mode is: a hand that turns a lens asks for those of the same fibre at every move. */
const known = new WeakMap<GuidedMode, SecondMoments>();

/**
 * Second moments of any mode. Near its cut-off a mode is wide, and so is its ⟨r²⟩. Computed once per mode and kept.
 *
 * @source the radial equation multiplied by the field and integrated, as for Petermann's second definition; checked
 *   against it for LP01
 */
export function secondMoments(mode: GuidedMode): SecondMoments {
  const kept = known.get(mode);
  if (kept !== undefined) return kept;
  const made = compute(mode);
  known.set(mode, made);
  return made;
}

function compute(mode: GuidedMode): SecondMoments {
  const core = [corePanel(mode)];
  const well = mode.profile === 'graded' ? mode.vNumber ** 2 * momentOver(core, 3) : 0;
  return {
    radiusSquared: momentOver(radialPanels(mode), 3),
    spectrumSquared: mode.u ** 2 * momentOver(core, 1) - well - mode.w ** 2 * claddingPower(mode),
  };
}
