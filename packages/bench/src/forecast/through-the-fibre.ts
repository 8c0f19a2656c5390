import {
  type AttenuationEstimate,
  angledFacet,
  attenuationEstimate,
  bendAttenuation,
  bendFormulaHolds,
  bulkSilicaRadiusFactor,
  fibreTransmission,
  normalReflectance,
  OutOfRange,
  remainingModeFraction,
  smallestCountedRadius,
  unpolarizedReflectance,
} from '@coreward/optics';
import type { FibreEnd, Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import { asStated, type Draw } from './draw.ts';
import type { Taker } from './fibre-taker.ts';
import { type Meeting, polishAngle } from './meeting.ts';

/** Reflectance of a coated end: an antireflection layer in its band (common practice, no source). */
const coatedReflectance = 0.005;

/** What an end lets through into or out of air. */
export function endTransmission(end: FibreEnd, index: number): number {
  switch (end) {
    case 'flat':
      return 1 - normalReflectance(1, index);
    case 'angled 8°':
      return 1 - unpolarizedReflectance(angledFacet(polishAngle, index).reflectance);
    case 'coated':
      return 1 - coatedReflectance;
  }
}

/** Power attenuation, Np/m: as written, or estimated for the wavelength. */
export function attenuationOf(launch: Launch, wavelength: number, draw: Draw): number {
  const { attenuation } = launch.fibre;
  if (attenuation !== null) return Math.max(0, draw.at(attenuation));
  try {
    const { expected, low, high } = estimateFor(launch, wavelength, draw);
    const z = draw.chance.attenuation;
    // low and high are 5 % and 95 %, 1.645 standard deviations of the logarithm off on their own sides
    return expected * ((z > 0 ? high : low) / expected) ** (Math.abs(z) / 1.645);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    throw new Refusal({
      where: 'fibre.attenuation',
      what: `it is left out, and for this wavelength there is no estimate (${error.what})`,
      mend: 'Write the attenuation, such as `attenuation: 0.2 dB/m`.',
    });
  }
}

/** A draw of the wavelength's doubt that leaves what is known of a fibre takes the stated one's estimate. */
function estimateFor({ laser, fibre }: Launch, wavelength: number, draw: Draw): AttenuationEstimate {
  try {
    return attenuationEstimate(wavelength, fibre.material);
  } catch (error) {
    if (draw === asStated || !(error instanceof OutOfRange)) throw error;
    return attenuationEstimate(laser.wavelength.value, fibre.material);
  }
}

/** The light that is guided, as one bend after the other leaves it. */
export interface InTheBends {
  /** Power in each mode of the taker's set, or null. */
  readonly powers: Float64Array | null;
  /** Where modes are too many to be followed: the share of them that is still there. */
  readonly modesLeft: number;
}

/** A bend, and what it lets through. */
export interface BendLoss {
  readonly transmission: number;
  /** Modes of the taker's set, by their place in it, that the bend formula gives up as lost. */
  readonly lostModes: number;
  /** What the next bend meets. */
  readonly behind: InTheBends;
}

/**
 * What one bend lets through of the light that is guided. Few modes: each mode by Marcuse's formula with an effective
 * radius between the two published views; a mode too loosely bound for the formula counts as lost. Many modes: somewhere
 * between no loss (an underfilled fibre) and Gloge's share of lost modes (all modes filled). What an earlier bend took is
 * not there to be taken again, and between bends modes keep their light.
 */
export function bendLoss(
  launch: Launch,
  bend: Launch['fibre']['bends'][number],
  meeting: Meeting,
  taker: Taker,
  { powers, modesLeft }: InTheBends,
  draw: Draw,
): BendLoss {
  const radius = draw.at(bend.radius);
  const turns = Math.max(0, draw.at(bend.turns));
  const { coreRadius, wavelength, index, numericalAperture } = meeting;
  if (taker.set !== null && powers !== null && taker.set.modes.length <= 60) {
    const fibre = { coreRadius, claddingIndex: index, wavelength };
    const factor = 1 + draw.chance.bend * (bulkSilicaRadiusFactor - 1);
    const length = 2 * Math.PI * radius * turns;
    const left = new Float64Array(powers.length);
    let lostModes = 0;
    taker.set.modes.forEach((mode, i) => {
      if (!bendFormulaHolds(mode, fibre, radius)) lostModes += 1;
      else left[i] = powers[i]! * fibreTransmission(bendAttenuation(mode, fibre, radius * factor), length);
    });
    const before = total(powers);
    return {
      transmission: before === 0 ? 1 : total(left) / before,
      lostModes,
      behind: { powers: left, modesLeft },
    };
  }
  const guide = {
    coreRadius,
    claddingIndex: index,
    relativeIndexDifference: numericalAperture ** 2 / (2 * (index ** 2 + numericalAperture ** 2)),
    profileExponent: launch.fibre.profile === 'step' ? Number.POSITIVE_INFINITY : 2,
  };
  const remaining =
    radius < smallestCountedRadius(guide, wavelength) ? 0 : remainingModeFraction(guide, radius, wavelength);
  const held = turns === 0 ? 1 : 1 - (1 - remaining) * draw.chance.bend;
  const stillThere = Math.min(modesLeft, held);
  return {
    transmission: modesLeft === 0 ? 1 : stillThere / modesLeft,
    lostModes: 0,
    behind: { powers, modesLeft: stillThere },
  };
}

/** Loops in which a fibre lies loosely on a bench, m. Common practice, no source: patch leads are coiled to half of it. */
const layRadius = 0.3;

/** Less than this of the light, a fiftieth of a decibel, is no entry of a ledger. */
const leastLost = 5e-3;

/** e^−x that nobody misses. */
const nothingLeft = 40;

/**
 * What a fibre takes that is not dead straight, of light in modes near their cut-off: they reach so far out that they
 * radiate in the widest loops. By the formula of bends, in loops of 0.3 m along the whole length. LP01 is left to the bends
 * that are written.
 */
export function lostInTheLay(
  launch: Launch,
  { coreRadius, wavelength, index }: Meeting,
  { set }: Taker,
  powers: Float64Array | null,
  draw: Draw,
): { readonly transmission: number; readonly powers: Float64Array | null } {
  if (set === null || powers === null || set.modes.length > 60) return { transmission: 1, powers };
  const fibre = { coreRadius, claddingIndex: index, wavelength };
  const wavenumber = (2 * Math.PI * index) / wavelength;
  const radius = layRadius * (1 + draw.chance.bend * (bulkSilicaRadiusFactor - 1));
  const length = Math.max(0, draw.at(launch.fibre.length));
  let left = powers;
  set.modes.forEach((mode, i) => {
    // the exponent of Marcuse's formula, for a glance: nearly every mode is held far better
    const exponent = (2 * mode.w ** 3 * layRadius) / (3 * coreRadius ** 3 * wavenumber ** 2);
    if (exponent > nothingLeft || powers[i] === 0 || (mode.l === 0 && mode.m === 1)) return;
    if (left === powers) left = powers.slice();
    left[i] = bendFormulaHolds(mode, fibre, layRadius)
      ? powers[i]! * fibreTransmission(bendAttenuation(mode, fibre, radius), length)
      : 0;
  });
  const before = total(powers);
  const transmission = before === 0 ? 1 : total(left) / before;
  return transmission > 1 - leastLost ? { transmission: 1, powers } : { transmission, powers: left };
}

const total = (powers: Float64Array): number => powers.reduce((sum, power) => sum + power, 0);

/** Length over which cladding light falls to 1/e, m (common practice, no source: it glows out of the first decimetres). */
const claddingReach = {
  strips: { length: 0.15, factor: 2 },
  guides: { length: 20, factor: 3 },
  unknown: { length: 0.5, factor: 6 },
} as const;

/** Share of the light in the cladding that is still there at the far end. */
export function claddingSurvival(launch: Launch, draw: Draw): number {
  const { length, factor } = claddingReach[launch.fibre.coating];
  return Math.exp(-draw.at(launch.fibre.length) / (length * factor ** draw.chance.cladding));
}
