import { type FacetBeam, gaussianOverlap, overlapOf } from '@coreward/optics';
import { fewModedBelow, modesTaker, roundBeam, type Taker } from '../forecast/fibre-taker.ts';

/** LP01 of a fibre whose modes are too many to be solved for a ranking. */
export interface FundamentalOfMany {
  /** Of the Gaussian that fits it best, in core radii. */
  readonly radius: number;
  /** What that Gaussian couples into it. */
  readonly bestShare: number;
  /** Share of a beam; lengths in m. */
  readonly share: (wavelength: number, coreRadius: number, beam: FacetBeam, tolerance: number) => number;
}

/**
 * A parabola's LP01 is a Gaussian. A step's hardly changes its shape any more: that of V = 15 stands for it, as large as
 * the Gaussian that fits, which is 0.65 + 1.619/V^1.5 core radii, Marcuse's fit carried beyond its range (measured: right to
 * 0.02 at V = 15, to 0.002 at V = 100).
 */
export function fundamentalOfMany(profile: 'step' | 'graded', vNumber: number): FundamentalOfMany {
  switch (profile) {
    case 'graded': {
      const radius = Math.sqrt(2 / vNumber);
      return {
        radius,
        bestShare: 1,
        share: (wavelength, coreRadius, beam) =>
          gaussianOverlap(wavelength, beam, roundBeam(radius * coreRadius, 1)),
      };
    }
    case 'step': {
      const { set, fundamentalRadius, fundamentalShare } = stepOfMany();
      const radius = 0.65 + 1.619 / vNumber ** 1.5;
      return {
        radius,
        bestShare: fundamentalShare,
        share: (wavelength, coreRadius, beam, tolerance) =>
          overlapOf(set, (coreRadius * radius) / fundamentalRadius, wavelength, beam, null, { tolerance })
            .fundamental,
      };
    }
  }
}

interface StepOfMany {
  readonly set: NonNullable<Taker['set']>;
  readonly fundamentalRadius: number;
  readonly fundamentalShare: number;
}

/** LP01 of a step at V = 15, solved once. */
const stepOfMany: () => StepOfMany = once(() => {
  const { fundamentalSet, bestRadius } = modesTaker('step', fewModedBelow, 32);
  const set = fundamentalSet!;
  const fundamentalRadius = bestRadius!;
  const matched = roundBeam(fundamentalRadius, 1);
  return { set, fundamentalRadius, fundamentalShare: overlapOf(set, 1, 0.01, matched).fundamental };
});

function once<Value>(make: () => Value): () => Value {
  let made: { readonly value: Value } | null = null;
  return () => {
    made ??= { value: make() };
    return made.value;
  };
}
