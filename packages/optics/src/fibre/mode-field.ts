import { brentMinimum, brentRoot } from '../numerics/brent.ts';
import { claddingPower } from './cladding-field.ts';
import { farFieldQ } from './far-field.ts';
import { type GuidedMode, radialField } from './guided-mode.ts';
import { mustBeLp01 } from './lp01.ts';
import { corePanel, momentOver, radialPanels } from './radial-integral.ts';

/**
 * What people call the mode-field radius of LP01. They differ: for a = 4.1 µm, NA 0.12 at 1310 nm the best Gaussian has
 * a diameter of 9.06 µm, Petermann II says 8.97 µm.
 *
 * - `best-gaussian`: w of the Gaussian exp(−r²/w²) that overlaps the mode best; for coupling.
 * - `petermann-2`: w² = 2∫R²ρ dρ / ∫R'²ρ dρ, inverse to the rms width of the far field; the ITU-T definition, data sheets.
 * - `second-moment`: Petermann I, w² = 2∫R²ρ³ dρ / ∫R²ρ dρ; half of D4σ of the near field.
 * - `near-field`: where the near-field intensity is 1/e² of that on the axis.
 * - `far-field`: of the Gaussian with the same 1/e² angle, w = 2a/Q.
 */
export const modeFieldDefinitions = [
  'best-gaussian',
  'petermann-2',
  'second-moment',
  'near-field',
  'far-field',
] as const;
export type ModeFieldDefinition = (typeof modeFieldDefinitions)[number];

/**
 * Mode-field RADIUS w of LP01 in core radii, by a named definition; the mode-field diameter is 2wa. Relative error below
 * 1e-10, for `best-gaussian` 1e-7 (the maximum is flat).
 *
 * @throws {OutOfRange} if the mode is not LP01
 * @source K. Petermann, Electron. Lett. 19, 712 (1983); D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977); ITU-T G.650.1
 *   (all from memory)
 */
export function modeFieldRadius(mode: GuidedMode, definition: ModeFieldDefinition): number {
  mustBeLp01(mode, 'modeFieldRadius');
  switch (definition) {
    case 'best-gaussian':
      return bestGaussian(mode).radius;
    case 'petermann-2':
      return petermannTwo(mode);
    case 'second-moment':
      return petermannOne(mode);
    case 'near-field':
      return nearFieldRadius(mode);
    case 'far-field':
      return 2 / farFieldQ(mode, Math.exp(-2));
  }
}

/** The Gaussian that fits LP01 best: its 1/e² intensity radius in core radii, and how much power they share (< 1). */
export interface BestGaussian {
  readonly radius: number;
  readonly overlap: number;
}

/**
 * The best Gaussian for LP01. `overlap` is exact to 1e-12, `radius` to 1e-7 relative.
 *
 * @throws {OutOfRange} if the mode is not LP01
 * @source D. Marcuse, Bell Syst. Tech. J. 56, 703 (1977) (from memory)
 */
export function bestGaussian(mode: GuidedMode): BestGaussian {
  mustBeLp01(mode, 'bestGaussian');
  const panels = radialPanels(mode);
  const amplitude = (radius: number) => {
    let sum = 0;
    for (const { nodes, weights, field } of panels) {
      for (let i = 0; i < nodes.length; i++) {
        sum += weights[i]! * nodes[i]! * field[i]! * Math.exp(-((nodes[i]! / radius) ** 2));
      }
    }
    return (2 * sum) / radius;
  };
  const low = Math.log(petermannTwo(mode) / 2);
  const high = Math.log(2 * petermannOne(mode));
  const best = brentMinimum((logarithm) => -amplitude(Math.exp(logarithm)), low, high, 1e-9);
  return { radius: Math.exp(best.x), overlap: best.value ** 2 };
}

/**
 * ∫R'²ρ dρ from the radial equation, multiplied by Rρ and integrated: u²∫R²ρ over the core, less V²∫R²ρ³ there if
 * graded, less w²∫R²ρ over the cladding. For the step this is the closed form w = √2 J₁(u)/(w J₀(u)).
 */
function petermannTwo(mode: GuidedMode): number {
  const core = [corePanel(mode)];
  const well = mode.profile === 'graded' ? mode.vNumber ** 2 * momentOver(core, 3) : 0;
  const slopes = mode.u ** 2 * momentOver(core, 1) - well - mode.w ** 2 * claddingPower(mode);
  return Math.sqrt(2 / slopes);
}

function petermannOne(mode: GuidedMode): number {
  return Math.sqrt(2 * momentOver(radialPanels(mode), 3));
}

function nearFieldRadius(mode: GuidedMode): number {
  const level = radialField(mode, 0) / Math.E;
  const excess = (rho: number) => radialField(mode, rho) - level;
  if (excess(1) < 0) return brentRoot(excess, 0, 1);
  let high = 2;
  while (excess(high) > 0) high *= 2;
  return brentRoot(excess, high / 2, high);
}
