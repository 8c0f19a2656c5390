/** One thing in a document or a reading that cannot be taken as it stands. */
export interface RefusalParts {
  /** `launch.yaml:21:17 collimator.focal length`: file, line, column (from 1) and the key as the user spelled it. */
  readonly where: string;
  /** What is wrong, with the offending text as written: "`6.2` has no unit". */
  readonly what: string;
  /** The one change that works if followed to the letter. */
  readonly mend: string;
}

/** All that is refused in one document or reading, at once. */
export class Refusal extends Error {
  readonly parts: readonly RefusalParts[];

  constructor(parts: RefusalParts | readonly RefusalParts[]) {
    const all: readonly RefusalParts[] = 'where' in parts ? [parts] : parts;
    super(all.map(({ where, what, mend }) => `${where}: ${what}. ${mend}`).join('\n'));
    this.name = 'Refusal';
    this.parts = all;
  }
}
