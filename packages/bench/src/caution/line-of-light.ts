/** Every wavelength that may be met on a bench, at the power to count, with its limits. */
import {
  type AssumedTime,
  assumedTime,
  assumedTimes,
  type Basis,
  type BothLimits,
  governingLimit,
  governingTrainLimit,
  type IrradianceLimit,
  isVisible,
  OutOfRange,
  powerAtLimit,
  type Tissue,
} from '@coreward/optics';
import { intervalOf } from '../quantity/distribution.ts';
import type { Quantity } from '../quantity/quantity.ts';
import type { Emission } from './answers.ts';
import { wavelengthText } from './limit-texts.ts';

/** Both sets' limits for one time, and the one that decides. */
export interface LimitsFor {
  readonly time: AssumedTime;
  readonly governing: IrradianceLimit;
  /** Of both sets, where they differ: a stop may make the higher irradiance the lower power. */
  readonly all: readonly IrradianceLimit[];
}

/** The lines of light there can be on one bench. */
export type LineName = 'laser' | 'infrared' | 'other' | 'reference' | 'reference-infrared';

/** Light of one wavelength, as it is counted. */
export interface LineOfLight {
  readonly name: LineName;
  /** In words: `the laser`, `hidden infrared of the laser`. */
  readonly title: string;
  /** Vacuum wavelength, m: as stated. */
  readonly wavelength: number;
  /** W, as written; `null` where nothing is written. */
  readonly stated: number | null;
  /** W that are counted. */
  readonly power: number;
  /** What was taken for granted about it. */
  readonly assumed: readonly string[];
  readonly seen: boolean;
  /** For the eye, for the time every caution is computed for; `null` where the tables do not cover the light. */
  readonly eye: LimitsFor | null;
  /** For the eye, for 100 s, where light that is seen is allowed less for that long: blue, and pulses; else `null`. */
  readonly accident: LimitsFor | null;
  /** For the eye, for the times shown beside it; computed when they are asked for. */
  readonly otherTimes: readonly LimitsFor[];
  readonly skin: LimitsFor | null;
  /** Why there is no limit. */
  readonly notCovered: string | null;
  readonly basis: readonly Basis[];
}

/** What a line is made from. */
export interface Light {
  readonly name: LineName;
  readonly title: string;
  readonly wavelength: Pick<Quantity, 'value' | 'uncertainty' | 'shape' | 'origin'>;
  readonly stated: number | null;
  readonly power: number;
  readonly assumed: readonly string[];
  readonly emission: Emission;
  readonly basis: readonly Basis[];
}

/** A limit so much lower within the doubt of the wavelength counts. @source our proposal */
const stricterFrom = 0.95;

/** A line with its limits. Where the doubt of its wavelength reaches one with a clearly lower limit, that one counts. */
export function lineOfLight({ wavelength, emission, ...light }: Light): LineOfLight {
  const stated = wavelength.value;
  const { low, high } = intervalOf(wavelength, 0.9);
  const facts = {
    ...light,
    wavelength: stated,
    // what may lie outside 400 to 700 nm may as well not be seen
    seen: [low, stated, high].every(isSeen),
  };
  try {
    const usual = usualLimit(stated, emission);
    const [, at] = [low, high]
      .filter((end) => end !== stated)
      .map((end) => [usualLimit(end, emission), end] as const)
      .reduce<readonly [number, number]>(
        (worst, [power, end]) => (power < stricterFrom * worst[0] ? [power, end] : worst),
        [usual, stated],
      );
    const assumed =
      at === stated
        ? light.assumed
        : [
            ...light.assumed,
            `its wavelength is doubtful, and at ${wavelengthText(at)} the limit is lower: that limit is used`,
          ];
    const time = assumedTime('beam', at);
    const eye = limitsFor('eye', at, time, emission);
    return {
      ...facts,
      eye,
      accident: stricterForLonger(at, eye, emission),
      get otherTimes() {
        return assumedTimes(at)
          .filter(({ situation }) => situation !== 'beam')
          .map((other) => limitsFor('eye', at, other, emission));
      },
      skin: limitsFor('skin', at, time, emission),
      assumed,
      notCovered: null,
    };
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return { ...facts, eye: null, accident: null, otherTimes: [], skin: null, notCovered: error.what };
  }
}

/** Photochemistry is judged up to here, m. @source BGI 832, table 1: read */
const photochemicalUpTo = 600e-9;

function stricterForLonger(wavelength: number, usual: LimitsFor, emission: Emission): LimitsFor | null {
  const time = assumedTime('worst accident', wavelength);
  if (time.exposureTime <= usual.time.exposureTime) return null;
  if (emission.kind === 'continuous' && wavelength > photochemicalUpTo) return null;
  const longer = limitsFor('eye', wavelength, time, emission);
  return leastPower(longer) < stricterFrom * leastPower(usual) ? longer : null;
}

/** The least power that can be at a limit, W. */
const leastPower = ({ all }: LimitsFor): number => Math.min(...all.map(powerAtLimit));

/** The least power that can be at a limit for the eye, W: what compares wavelengths. Where no table holds, any light is less. */
function usualLimit(wavelength: number, emission: Emission): number {
  try {
    return leastPower(limitsFor('eye', wavelength, assumedTime('beam', wavelength), emission));
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return 0;
  }
}

function limitsFor(tissue: Tissue, wavelength: number, time: AssumedTime, emission: Emission): LimitsFor {
  // a laser beam and the end of a glass fibre are points: no limit is relaxed
  const exposure = { tissue, wavelength, exposureTime: time.exposureTime, sourceAngle: null };
  const both: BothLimits<IrradianceLimit> =
    emission.kind === 'continuous'
      ? governingLimit(exposure)
      : governingTrainLimit({ ...exposure, ...emission });
  const { eu2006, icnirp2013 } = both.sets;
  const isOne = both.isTie && eu2006.averagingDiameter === icnirp2013.averagingDiameter;
  return { time, governing: both.governing, all: isOne ? [both.governing] : [eu2006, icnirp2013] };
}

function isSeen(wavelength: number): boolean {
  try {
    return isVisible(wavelength);
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return false;
  }
}
