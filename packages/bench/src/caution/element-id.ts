import type { PathElement } from '../launch/launch.ts';
import { slugOf } from './laser-key.ts';
import type { LineOfLight } from './line-of-light.ts';

/** `mirror-M1`, `lens-L1`: stable as long as the part keeps its name. */
export function slugged(part: Exclude<PathElement, { kind: 'space' }>): string {
  // the ledger's entries have the same form
  return `${part.kind}-${slugOf(part.name) === '' ? 'unnamed' : part.name}`;
}

/** The id of a hazard of one line: that of the laser's own light has the plain name. */
export const idFor = (base: string, { name }: Pick<LineOfLight, 'name'>): string =>
  name === 'laser' ? base : `${base}-${name}`;
