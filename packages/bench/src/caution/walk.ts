import type { Launch } from '../launch/launch.ts';
import type { Answers } from './answers.ts';
import type { WalkFacts } from './eye-hazard.ts';
import { type Cones, endCone, launchedAperture } from './fibre-end.ts';
import { type LightToCount, lightToCount } from './light-to-count.ts';
import type { LineOfLight } from './line-of-light.ts';
import { type FreeBeam, freeBeam } from './stretches.ts';

/** A launch made ready to be walked along: the light to count, and the free beam in every view. */
export interface Walk {
  readonly launch: Launch;
  readonly answers: Answers;
  readonly light: LightToCount;
  /** As stated, hardly spreading, narrow. */
  readonly views: readonly [FreeBeam, FreeBeam, FreeBeam];
  /** Cones of the far end, of the laser's light and of each companion's. */
  readonly cones: { readonly laser: Cones; readonly companions: readonly Cones[] };
  readonly facts: WalkFacts;
  /** Whether the laser's profile may be uneven: nobody said that it is smooth. */
  readonly uneven: boolean;
}

/** @throws {OutOfRange} where a glass or a beam leaves its range */
export function walkOf(launch: Launch, answers: Answers): Walk {
  const light = lightToCount(launch, answers);
  const views: Walk['views'] = [
    freeBeam(launch, 'stated'),
    freeBeam(launch, 'hardly spreading'),
    freeBeam(launch, 'narrow'),
  ];
  const launched = views.map(launchedAperture);
  const conesOf = ({ wavelength }: LineOfLight): Cones => ({
    stated: endCone(launch.fibre, wavelength, launched[0]!, 'stated'),
    worse: endCone(launch.fibre, wavelength, Math.min(...launched), 'worse'),
  });
  return {
    launch,
    answers,
    light,
    views,
    cones: { laser: conesOf(light.laser), companions: light.companions.map(conesOf) },
    facts: { roomLength: answers.roomLength },
    uneven: answers.profile !== 'smooth',
  };
}
