/** As what a pulsed laser would be treated: by the energy of a pulse, and by the power on average. */
import { mustBePositive, OutOfRange } from '../out-of-range.ts';
import { eyeStopDiameter, stopArea } from './averaging-stop.ts';
import { classEstimate } from './class-estimate.ts';
import { holds, nanometres } from './closed-range.ts';
import { correctionA } from './correction-factors.ts';
import { type Basis, joinBases } from './evidence.ts';
import { exposureLimit } from './exposure-limit.ts';
import { classWording, type LaserClass, worstClass } from './laser-class.ts';
import { type LimitSet, limitSets } from './limit-set.ts';
import { trainLimit } from './pulse-train.ts';

/** A laser that sends equal pulses at an even rate, or one alone. */
export interface PulsedLaser {
  /** m. */
  readonly wavelength: number;
  /** s; up to 0.25 s. */
  readonly pulseDuration: number;
  /** J; `null`: not known, which counts as the worst. */
  readonly pulseEnergy: number | null;
  /** Hz; `null`: one pulse alone. */
  readonly repetitionRate: number | null;
}

/** The energy of one pulse, J, up to which its class would be 1. */
export interface PulsedClass1 {
  readonly set: LimitSet;
  readonly wavelength: number;
  readonly pulseDuration: number;
  readonly energy: number;
  readonly basis: readonly Basis[];
}

const retina = { from: 400, to: 1400 } as const;
const standard: Basis = {
  evidence: 'from memory',
  source: 'IEC 60825-1:2007 and 2014: class 1 and 3B figures of pulses',
};

/**
 * The class 1 figure of one pulse: the exposure limit times the area of the 7 mm stop. The tables print it rounded,
 * 2·10⁻⁷ J (2007) and 7.7·10⁻⁸ J (2014) for visible nanoseconds.
 *
 * @param pulseDuration s, 100 fs to 0.25 s
 * @throws {OutOfRange} outside 400 to 1400 nm, where no figure is known here, and outside these durations
 * @source the limit's own; IEC 60825-1:2007 and 2014 from memory
 */
export function pulsedClass1Figure(set: LimitSet, wavelength: number, pulseDuration: number): PulsedClass1 {
  mustBePulse(pulseDuration);
  if (!holds(retina, nanometres(wavelength))) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `no class 1 figure of pulses is known here at ${nanometres(wavelength)} nm, only from 400 to 1400 nm`,
      mend: 'Treat the laser like class 3B, and ask your laser safety officer.',
    });
  }
  const limit = exposureLimit(set, {
    tissue: 'eye',
    wavelength,
    exposureTime: pulseDuration,
    sourceAngle: null,
  });
  return {
    set,
    wavelength,
    pulseDuration,
    energy: limit.radiantExposure * stopArea(eyeStopDiameter),
    basis: joinBases([standard], limit.basis),
  };
}

/** What is said of a pulsed laser, worded as for continuous light. */
export interface PulsedClassEstimate {
  readonly treatedLike: LaserClass;
  readonly wording: string;
  readonly laser: PulsedLaser;
  /** The stricter of the two sets in the class 1 figure; `null` where there is none. */
  readonly set: LimitSet | null;
  /** s, for the train. */
  readonly timeBase: number;
  readonly remarks: readonly string[];
  readonly basis: readonly Basis[];
}

const timeBase = 100;

/**
 * The class of a pulsed laser: the worst of its single pulse, its train over 100 s, and its average power. All of it is
 * taken to enter the stop. There is no class 2 for it here.
 *
 * @throws {OutOfRange} outside 315 to 4000 nm or 100 fs to 0.25 s, if a rate is not above zero, or pulses overlap
 * @source class 1 as `pulsedClass1Figure` and `trainLimit`; 3R five times that (read); 3B from memory
 */
export function pulsedClassEstimate(laser: PulsedLaser): PulsedClassEstimate {
  const { wavelength, pulseDuration, pulseEnergy, repetitionRate } = laser;
  mustBePulse(pulseDuration);
  if (pulseEnergy === null) {
    return told('4', laser, null, ['the energy of a pulse is not known: the worst is assumed'], [standard]);
  }
  mustBePositive(pulseEnergy, 'pulseEnergy', 'the energy of a pulse');
  const average = classEstimate({
    wavelength,
    power: repetitionRate === null ? 0 : pulseEnergy * repetitionRate,
  });
  const above3B = pulseEnergy > class3BEnergy(wavelength, pulseDuration) ? ['4' as const] : [];
  if (!holds(retina, nanometres(wavelength))) {
    const remarks = ['no class 1 figure of pulses is known here outside 400 to 1400 nm'];
    return told(worstClass('3B', average.treatedLike, ...above3B), laser, null, remarks, [standard]);
  }
  const class1 = strictestClass1(laser);
  const byPulse = pulseEnergy <= class1.energy ? '1' : pulseEnergy <= 5 * class1.energy ? '3R' : '3B';
  return told(
    worstClass(byPulse, average.treatedLike, ...above3B),
    laser,
    class1.set,
    average.remarks,
    joinBases(class1.basis, average.basis),
  );
}

/** The lower class 1 figure of both sets, of the single pulse or of a pulse in its train. */
function strictestClass1(laser: PulsedLaser): PulsedClass1 {
  const figures = limitSets.map((set) => class1In(set, laser));
  return figures.reduce((least, one) => (one.energy < least.energy ? one : least));
}

function class1In(set: LimitSet, { wavelength, pulseDuration, repetitionRate }: PulsedLaser): PulsedClass1 {
  const single = pulsedClass1Figure(set, wavelength, pulseDuration);
  if (repetitionRate === null) return single;
  const train = trainLimit(set, {
    tissue: 'eye',
    wavelength,
    sourceAngle: null,
    pulseDuration,
    repetitionRate,
    exposureTime: timeBase,
  });
  return {
    ...single,
    // never more than that of the single pulse, which is one of the train's rules
    energy: train.radiantExposurePerPulse * stopArea(eyeStopDiameter),
    basis: joinBases(single.basis, train.basis),
  };
}

/** J; below 400 nm no figure is known here, and every pulse counts as above it. */
function class3BEnergy(wavelength: number, pulseDuration: number): number {
  const nm = nanometres(wavelength);
  const continuous = 0.5 * pulseDuration; // where 0.5 W takes over from the energy
  const figures = [
    ...(nm <= 400 ? [0] : []),
    ...(nm >= 400 && nm <= 1050 ? [0.03 * correctionA(wavelength).value] : []),
    ...(nm >= 1050 && nm <= 1400 ? [0.15] : []),
    ...(nm >= 1400 ? [0.125] : []),
  ];
  const figure = Math.min(...figures);
  return figure === 0 ? 0 : Math.max(figure, continuous);
}

function told(
  treatedLike: LaserClass,
  laser: PulsedLaser,
  set: LimitSet | null,
  remarks: readonly string[],
  basis: readonly Basis[],
): PulsedClassEstimate {
  return { treatedLike, wording: classWording(treatedLike), laser, set, timeBase, remarks, basis };
}

function mustBePulse(pulseDuration: number): void {
  if (pulseDuration >= 100e-15 && pulseDuration <= 0.25) return;
  throw new OutOfRange({
    where: 'pulseDuration',
    what: `${pulseDuration} s is outside what this tool takes for a pulse, 100 fs to 0.25 s`,
    mend: 'For longer light use classEstimate, with the highest power.',
  });
}
