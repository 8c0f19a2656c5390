/** How little light to align with. It reduces the hazard; it does not remove it. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { mustBePower } from './beam-definition.ts';
import { class1Figure } from './class-figures.ts';
import { nanometres } from './closed-range.ts';
import { type Basis, joinBases } from './evidence.ts';
import type { LimitSet } from './limit-set.ts';

/** How the light may be looked for at that power. */
export type AlignmentViewing = 'diffuse spots' | 'card, camera or detector only' | 'detector only';

/** How much light an alignment should be done with, and what that rests on. */
export interface AlignmentPower {
  /** m. */
  readonly wavelength: number;
  /** At most this much into the setup, W. */
  readonly power: number;
  /** Better this much, W. */
  readonly better: number;
  readonly viewing: AlignmentViewing;
  /** The set whose class 1 figure it is; `null` where it is a practice of its own. */
  readonly set: LimitSet | null;
  /** s; what the figure stands for. */
  readonly exposureTime: number;
  readonly basis: readonly Basis[];
}

const universityNote: Basis = {
  evidence: 'read',
  source: 'a university’s note on alignment: 1 mW (another’s says 5 mW)',
};
const reaction2s: Basis = {
  evidence: 'read',
  source: 'DGUV Information 203-042: 0.6 mW for a reaction of 2 s',
};
const fromClass1: Basis = { evidence: 'proposal', source: 'our proposal: no more than the class 1 figure' };

/**
 * The power to align with: 1 mW, better 0.6 mW, from 450 to 700 nm; elsewhere the class 1 figure, for violet light looks
 * dim and infrared is not seen. At a shared boundary the lower one.
 *
 * @param wavelength m, 400 to 4000 nm
 * @throws {OutOfRange} outside that band
 * @source 1 mW: a university's note, read; 0.6 mW: DGUV Information 203-042, read; the rest our proposal from class 1
 */
export function alignmentPower(wavelength: number): AlignmentPower {
  const nm = nanometres(wavelength);
  if (!(nm >= 400 && nm <= 4000)) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `a power to align ${nm} nm with is outside what this tool covers, 400 to 4000 nm`,
      mend: 'Align with a visible pilot over the same path.',
    });
  }
  if (nm > 450 && nm < 700) {
    return {
      wavelength,
      power: 1e-3,
      better: 0.6e-3,
      viewing: 'diffuse spots',
      set: null,
      exposureTime: 2,
      basis: [universityNote, reaction2s],
    };
  }
  const { power, basis, set, timeBase } = class1Figure('eu2006', wavelength);
  return {
    wavelength,
    power,
    better: power,
    viewing: viewingAt(nm),
    set,
    exposureTime: timeBase,
    basis: joinBases([fromClass1], basis),
  };
}

function viewingAt(nm: number): AlignmentViewing {
  if (nm < 700) return 'diffuse spots';
  return nm < 1400 ? 'card, camera or detector only' : 'detector only';
}

/**
 * The optical density that brings a power down to another: log₁₀(P/P_align), 0 if it is there already. A tilted filter
 * throws a beam back: block it.
 *
 * @param power W
 * @param target W
 * @throws {OutOfRange} if the power is negative or the target not above zero
 * @source mathematics
 */
export function attenuationNeeded(power: number, target: number): number {
  mustBePower(power);
  mustBePositive(target, 'target', 'a power to align with');
  return Math.max(0, Math.log10(power / target));
}
