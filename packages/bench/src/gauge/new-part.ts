import { detectorKinds } from '../drawer/drawer.ts';
import { type KeptPart, newPart, type PartKind, partKinds } from '../drawer/part.ts';
import { partFields } from '../drawer/part-fields.ts';
import { filledIn, placesToFill } from './fill-in.ts';
import type { DrawerEntry } from './to-drawer.ts';

/** A part that does not lie in the drawer yet, and the answers that tell something of it. */
export interface PartToBegin {
  readonly kind: PartKind;
  readonly entries: readonly DrawerEntry[];
}

/**
 * The kinds of part that answers may begin, in the order of the light. Of each answer the first key of a part counts. A
 * ruler measures anything, and begins nothing.
 *
 * @param gauge that gave the answers
 */
export function partsToBegin(gauge: string, entries: readonly DrawerEntry[]): readonly PartToBegin[] {
  if (gauge === 'ruler') return [];
  return partKinds.flatMap((kind) => {
    const empty = newPart(kind, {});
    const fields = partFields(empty);
    const own = entries.filter(
      (entry, i) =>
        placesToFill(entry, fields, kind).length > 0 &&
        entries.findIndex((one) => one.quantity.value === entry.quantity.value && isOf(one, entry)) === i,
    );
    return own.length === 0 ? [] : [{ kind, entries: own }];
  });
}

/** Whether two entries tell of one kind of part. */
const isOf = (a: DrawerEntry, b: DrawerEntry): boolean => a.key.split('.')[0] === b.key.split('.')[0];

/** A new part with what was measured of it filled in, and a name. */
export function begunPart(gauge: string, { kind, entries }: PartToBegin, name: string): KeptPart {
  const is = detectorKinds.find((one) => one === gauge.replace('-', ' ')) ?? 'other';
  const empty = newPart(kind, { name, ...(kind === 'detector' ? { kind: is } : {}) });
  return entries.reduce((part, entry) => {
    const [place] = placesToFill(entry, partFields(part), kind);
    return place === undefined ? part : { kind, text: filledIn(part.text, place, entry, null) };
  }, empty);
}
