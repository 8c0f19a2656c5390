import type { FieldNode, FieldPath, QuantityField } from '../document/fields.ts';
import { placeOfPath } from '../document/places.ts';
import { setInText } from '../document/set-in-text.ts';
import type { PartKind } from '../drawer/part.ts';
import type { DrawerEntry } from './to-drawer.ts';

/** A place of a document that an answer may fill. */
export interface PlaceToFill {
  readonly path: FieldPath;
  /** As refusals and forecasts spell it: `laser.beam.waist diameter`, `path.2.mirror.reflectance`. */
  readonly place: string;
  /** What stands there: `0.84 mm ± 0.05 mm`, and who says so; null: nothing. */
  readonly before: string | null;
  readonly origin: string | null;
  readonly note: string | null;
  /** With what it holds: the distance of a diameter, the pitch of a lever; null where nothing belongs to it. */
  readonly beside: { readonly key: string; readonly path: FieldPath; readonly before: string | null } | null;
}

/**
 * The places of a launch or a part that an answer may fill, in the order of the document. A description that the document
 * does not use, such as a diameter where it tells the waist, is no place: what stands there would be contradicted.
 *
 * @param fields as `launchFields` or `partFields` give them
 * @param kind of the part; null for a launch
 */
export function placesToFill(
  { key }: Pick<DrawerEntry, 'key'>,
  fields: FieldNode,
  kind: PartKind | null,
): readonly PlaceToFill[] {
  return quantitiesIn(fields, null).flatMap(({ field, group }) =>
    keyOf(field.path, kind) === key ? [placeOf(field, group)] : [],
  );
}

/**
 * A document with an answer filled in at a place, its origin and its note with it.
 *
 * @param typed what stands beside it; null: as it is, or as the answer needs it
 */
export function filledIn(
  text: string,
  place: PlaceToFill,
  { text: value, at, quantity, beside: goesWithIt }: DrawerEntry,
  typed: string | null,
): string {
  const beside = typed ?? (place.beside?.key === goesWithIt?.key ? (goesWithIt?.text ?? null) : null);
  const note = quantity.note ?? '';
  const written = setInText(text, place.path, {
    value,
    ...(at === null ? {} : { at }),
    origin: 'measured',
    note,
  });
  if (place.beside === null || beside === null || beside === (place.beside.before ?? '')) return written;
  return setInText(written, place.beside.path, beside === '' ? null : beside);
}

interface Within {
  readonly field: QuantityField;
  readonly group: Extract<FieldNode, { kind: 'group' }> | null;
}

function quantitiesIn(node: FieldNode, group: Within['group']): readonly Within[] {
  switch (node.kind) {
    case 'quantity':
      return [{ field: node, group }];
    case 'group': {
      if (typeof node.written === 'object') return [];
      return node.fields
        .filter(({ key }) => goesWith(node, key))
        .flatMap((field) => quantitiesIn(field, node));
    }
    case 'list':
      return node.items.flatMap((item) => quantitiesIn(item, group));
    default:
      return [];
  }
}

/** Whether a key goes with the description that is used. */
function goesWith({ variants, variant }: Extract<FieldNode, { kind: 'group' }>, key: string): boolean {
  const named = (one: { readonly needs: readonly string[]; readonly allows: readonly string[] }): boolean =>
    one.needs.includes(key) || one.allows.includes(key);
  const chosen = variants?.[variant];
  return chosen === undefined || named(chosen) || !variants!.some(named);
}

/** `path.2.mirror.reflectance`, `mirrors.1.reflectance` as `path.reflectance`; x and y of a beam are both the beam. */
function keyOf(path: FieldPath, kind: PartKind | null): string {
  const steps = kind === null ? path : [kind === 'mirror' ? 'path' : kind, ...path.slice(2)];
  return steps.filter((step) => typeof step === 'string' && !passedOver.has(step)).join('.');
}

const passedOver: ReadonlySet<string | number> = new Set(['x', 'y', 'stop', 'mirror']);

function placeOf({ path, written }: QuantityField, group: Within['group']): PlaceToFill {
  const key = besideOf[`${path.at(-1)}`];
  const at = key === undefined ? undefined : group?.fields.find((field) => field.key === key);
  return {
    path,
    place: placeOfPath(path),
    before: written?.text ?? null,
    origin: written?.origin ?? null,
    note: written?.note ?? null,
    beside: at?.kind === 'quantity' ? { key: at.key, path: at.path, before: at.written?.text ?? null } : null,
  };
}

/** What holds only with the field beside it. */
const besideOf: Readonly<Record<string, string>> = { diameter: 'at', lever: 'pitch', responsivity: 'load' };
