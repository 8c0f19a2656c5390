import type { PathElement } from '../launch/launch.ts';
import { slugOf } from './laser-key.ts';

/** `mirror-M1`, `lens-L1`: stable as long as the part keeps its name. */
export function slugged(part: Exclude<PathElement, { kind: 'space' }>): string {
  // the ledger's entries have the same form
  return `${part.kind}-${slugOf(part.name) === '' ? 'unnamed' : part.name}`;
}
