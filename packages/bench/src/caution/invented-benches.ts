import type { Launch } from '../launch/launch.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { type CautionOptions, type Cautions, cautionsFor } from './cautions.ts';
import type { Hazard } from './hazard.ts';
import { readAnswers } from './read-answers.ts';

/** Benches invented for the tests of this folder. */
/** A launch from a few words; what is not named is as in the invented bench. */
export interface Bench {
  readonly wavelength?: string;
  readonly power?: string;
  readonly beam?: string;
  readonly path?: string;
  readonly collimator?: string;
  readonly fibre?: string;
  readonly rest?: string;
}

/** A launch without doubts for tests, with what they change of it; every value as a document writes it. */
export function launchOf({
  wavelength = '633 nm ± 0 nm',
  power = '5 mW ± 0 mW',
  beam = '{ waist diameter: 1 mm ± 0 mm, waist position: 0 mm ± 0 mm, quality: 1 within 0 }',
  path = '[]',
  collimator = '{ focal length: 8 mm ± 0 mm }',
  fibre = '{ profile: step, core diameter: 4 µm ± 0 µm, numerical aperture: 0.12 ± 0, length: 2 m, attenuation: 10 dB/km }',
  rest = '',
}: Bench = {}): Launch {
  return readLaunch(
    `coreward: 1\nlaser: { wavelength: ${wavelength}, power: ${power}, beam: ${beam} }\npath: ${path}\n` +
      `collimator: ${collimator}\nfibre: ${fibre}\n${rest}\n`,
    'bench',
  );
}

/** Its cautions, with answers as they are typed. */
export function walked(
  bench: Bench,
  answers: Record<string, string> = {},
  options: CautionOptions = {},
): Cautions {
  const launch = launchOf(bench);
  return cautionsFor(launch, { answers: readAnswers(launch, answers), ...options });
}

/** One hazard of a walk; a test that asks for another one fails. */
export const hazardOf = (cautions: Cautions, id: string): Hazard => {
  const found = cautions.hazards.find((hazard) => hazard.id === id);
  if (found === undefined) throw new Error(`no hazard ${id}`);
  return found;
};

/** Everything that is asked about power and profile answered, so that nothing is added. */
export const asWritten = (power: string): Record<string, string> => ({
  'highest-power': power,
  emission: 'continuous',
  profile: 'smooth',
});
