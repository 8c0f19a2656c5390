import type { Report } from './report.ts';
import { printable, shown } from './shown.ts';
import type { Tree } from './yaml-tree.ts';

/** A value that a comma has cut, as it was meant: `8,5 mm`. */
export interface CutValue {
  readonly wrote: string;
  /** How many of the pieces behind it belong to it. */
  readonly pieces: number;
}

/**
 * Within brackets a comma ends the value to YAML: of `{ focal length: 8,5 mm }` and `[ space: 8,5 mm ]` the `5 mm` stands
 * alone behind the `8`. Puts together again what was written; `null` where no number was cut.
 *
 * @param behind what stands alone behind the value, piece by piece, up to the first that does not
 */
export function cutByComma(value: Tree, behind: readonly string[]): CutValue | null {
  if (value.kind !== 'text') return null;
  let wrote = value.text;
  let pieces = 0;
  for (const piece of behind) {
    if (!/(?:^|[\s±])[-+−]?\d+$/u.test(wrote) || !/^\d/u.test(piece)) break;
    wrote += `,${piece}`;
    pieces += 1;
  }
  return pieces === 0 ? null : { wrote, pieces };
}

/** Refuses a value that was cut, with decimal points in place of its commas. */
export function refuseCut({ wrote }: CutValue, value: Tree, path: string, report: Report): void {
  const mend = `Write \`${printable(wrote.replaceAll(',', '.'))}\`.`;
  report.refuseAt(value.at, path, `${shown(wrote)} has a comma in its number`, mend);
}
