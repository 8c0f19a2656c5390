/** Slips of the pen in a launch, for the tests of what is refused of it. */
import { Refusal, type RefusalParts } from '../refusal.ts';
import { readLaunch } from './read-launch.ts';

/** One launch, a line for each thing that a slip may change. */
export const goodLaunch: readonly string[] = [
  'coreward: 1',
  'laser:',
  '  wavelength: 520 nm',
  '  power: 5 mW',
  '  beam: { waist diameter: 0.8 mm }',
  'path:',
  '  - space: 300 mm',
  '  - mirror: { reflectance: 97 % }',
  'collimator:',
  '  focal length: 8 mm',
  'fibre:',
  '  core diameter: 8.2 µm',
  '  numerical aperture: 0.13',
  '  length: 18 m',
];

/** All that is refused of a launch; nothing, if it can be read. */
export function refusedIn(text: string): readonly RefusalParts[] {
  try {
    readLaunch(text, 'launch.yaml');
  } catch (error) {
    if (error instanceof Refusal) return error.parts;
    throw error;
  }
  return [];
}

/** The good launch with something else on one line, counted from 1. */
export const withLine = (line: number, is: string): string => goodLaunch.with(line - 1, is).join('\n');

/** One slip, and what must be said of it. */
export interface Slip {
  /** What is wrong. */
  readonly name: string;
  /** Line (from 1) and what stands there instead. */
  readonly line: number;
  readonly is: string;
  readonly where: string;
  readonly what: RegExp;
  readonly mend: RegExp;
  /** Where one slip is two mistakes. */
  readonly refusals?: number;
  /** The line again with the mend followed to the letter; it must be read then. */
  readonly mended: string;
}

/** What is amiss with the refusal of a slip, in words; nothing, if it is as it should be. */
export function amissIn({ line, is, where, what, mend, refusals = 1, mended }: Slip): readonly string[] {
  const refused = refusedIn(withLine(line, is));
  const [first] = refused;
  return [
    ...(refused.length === refusals ? [] : [`${refused.length} refusals, not ${refusals}`]),
    ...(first?.where === where ? [] : [`where: ${first?.where}`]),
    ...(what.test(first?.what ?? '') ? [] : [`what: ${first?.what}`]),
    ...(mend.test(first?.mend ?? '') ? [] : [`mend: ${first?.mend}`]),
    ...refusedIn(withLine(line, mended)).map((still) => `mended, still refused: ${still.what}`),
  ];
}
