/** What holds for the whole bench: as what its light would be treated, how dark eyewear must be, how little to align with. */
import {
  type AlignmentPower,
  alignmentPower,
  attenuationNeeded,
  type ClassEstimate,
  classEstimate,
  largestDensity,
  type OpticalDensity,
  OutOfRange,
  opticalDensityForPower,
  withLabel,
} from '@coreward/optics';
import { linesOf } from './light-to-count.ts';
import type { LimitsFor, LineOfLight } from './line-of-light.ts';
import type { Walk } from './walk.ts';

/** For one line of light. */
export interface LineSummary {
  readonly line: LineOfLight;
  /** `null` where no table of classes covers it, or where it is pulsed: then it is treated like class 4. */
  readonly treatedLike: ClassEstimate | null;
  /** One for each time that is shown, the caution's own first. */
  readonly eyewear: readonly EyewearFor[];
  /** `null` where no power is known to align with, and for pulses: then by a visible pilot. */
  readonly alignment: { readonly power: AlignmentPower; readonly attenuation: number } | null;
}

/** The optical density that eyewear needs for one time, and for how long that holds. */
export interface EyewearFor {
  readonly exposureTime: number;
  readonly wording: string;
  readonly density: OpticalDensity;
}

/** Of every line on the bench, the laser's first. */
export function lineSummaries({ light, answers }: Walk): readonly LineSummary[] {
  return linesOf(light).map((line) => {
    const pulsed = answers.emission?.kind === 'pulsed' && line.name !== 'reference';
    const label = line.name === 'laser' ? answers.label : null;
    return {
      line,
      treatedLike: pulsed
        ? null
        : orNull(() => withLabel(classEstimate({ wavelength: line.wavelength, power: line.power }), label)),
      eyewear: line.eye === null ? [] : [line.eye, ...line.otherTimes].map((limits) => eyewear(line, limits)),
      // a milliwatt on average can be far above the limit in pulses
      alignment: pulsed
        ? null
        : orNull(() => {
            const power = alignmentPower(line.wavelength);
            return { power, attenuation: attenuationNeeded(line.power, power.power) };
          }),
    };
  });
}

function eyewear({ power }: LineOfLight, { time, all }: LimitsFor): EyewearFor {
  const [first, ...others] = all.map((limit) => opticalDensityForPower(power, limit));
  return {
    exposureTime: time.exposureTime,
    wording: time.wording,
    density: largestDensity(first!, ...others),
  };
}

function orNull<T>(computed: () => T): T | null {
  try {
    return computed();
  } catch (error) {
    if (!(error instanceof OutOfRange)) throw error;
    return null;
  }
}
