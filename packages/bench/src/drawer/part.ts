import { behind, nothing } from '../document/behind.ts';
import { type FieldNode, type FieldPath, fieldsOf } from '../document/fields.ts';
import { type Written, writeTree } from '../document/write-tree.ts';
import { readTree, type Tree } from '../document/yaml-tree.ts';
import { documentVersion, launchForm } from '../launch/launch-form.ts';
import { Refusal, type RefusalParts } from '../refusal.ts';
import type { Drawer } from './drawer.ts';
import { drawerForm } from './drawer-form.ts';
import { readDrawer } from './read-drawer.ts';

/** The lists of a drawer, each by the kind of part that lies in it. */
export const listOf = {
  laser: 'lasers',
  collimator: 'collimators',
  fibre: 'fibres',
  mirror: 'mirrors',
  detector: 'detectors',
  reference: 'references',
} as const;

export type PartKind = keyof typeof listOf;
/** In the order in which light meets them. */
export const partKinds = Object.keys(listOf) as readonly PartKind[];

/** A part as it is kept: a drawer document with one part of this kind in it, and nothing else. */
export interface KeptPart {
  readonly kind: PartKind;
  readonly text: string;
}

/** One thing that is refused, and the place it concerns: `lasers.1.beam.diameter`, ranks in lists from 1; empty: the whole. */
export interface RefusedPlace {
  readonly place: string;
  readonly what: string;
  readonly mend: string;
}

/**
 * The drawer that parts make together.
 *
 * @param way a drawer document with nothing but the path from any laser to any collimator; `null`: nothing lies between
 * @throws {Refusal} with all that is refused in any of them
 */
export function drawerOfParts(parts: readonly KeptPart[], way: string | null): Drawer {
  const texts = [...parts.map(({ text }) => text), ...(way === null ? [] : [way])];
  return { ...readDrawer(texts.map((text) => ({ text, file: 'drawer' }))), name: 'drawer' };
}

/** The name of a part that can be read, and what is refused of it if it cannot. */
export function readPart({ kind, text }: KeptPart): {
  readonly name: string;
  readonly refused: readonly RefusedPlace[];
} {
  try {
    const drawer = readDrawer([{ text, file: 'drawer' }]);
    return { name: drawer[listOf[kind]][0]?.name ?? '', refused: [] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { name: '', refused: placesRefused(error) };
  }
}

/** What a refusal says, by the places in the document. */
export function placesRefused({ parts }: Refusal): readonly RefusedPlace[] {
  return parts.map(({ where, what, mend }: RefusalParts) => ({
    place: /:\d+:\d+ (.*)$/u.exec(where)?.[1] ?? '',
    what,
    mend,
  }));
}

/** How a refusal spells a path: `bends.1.radius`. */
export const placeOfPath = (path: FieldPath): string =>
  path.map((step) => (typeof step === 'number' ? `${step + 1}` : step)).join('.');

/**
 * What may be filled in for a part, and what is written; paths begin at the document.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function partFields({ kind, text }: KeptPart): FieldNode {
  const { item } = drawerForm.keys[listOf[kind]].form;
  return fieldsOf(item, keysOf({ kind, text }), {
    path: [listOf[kind], 0],
    key: kind,
    about: '',
    leftOut: { kind: 'required' },
  });
}

/**
 * What may be filled in for the way from any laser to any collimator, and what is written.
 *
 * @param way as in `drawerOfParts`
 * @throws {Refusal} if the text is not YAML
 */
export function wayFields(way: string): FieldNode {
  const { form, about, presence } = drawerForm.keys.path;
  return fieldsOf(form, behind(readTree(way, 'drawer'), 'path'), {
    path: ['path'],
    key: 'path',
    about,
    leftOut: presence,
  });
}

/**
 * What may be filled in for a launch, and what is written.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function launchFields(text: string): FieldNode {
  return fieldsOf(launchForm, readTree(text, 'launch'), {
    path: [],
    key: 'launch',
    about: '',
    leftOut: { kind: 'required' },
  });
}

/** A part with nothing but the keys that are given. */
export function newPart(kind: PartKind, keys: { readonly [key: string]: Written | null }): KeptPart {
  return { kind, text: writeTree({ coreward: documentVersion, [listOf[kind]]: [keys] }) };
}

/**
 * A part's keys as they are written, to stand in a launch.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function writtenPart(part: KeptPart): Written {
  return written(keysOf(part));
}

/**
 * A way as it is written, to stand in a launch.
 *
 * @param way as in `drawerOfParts`
 * @throws {Refusal} if the text is not YAML
 */
export function writtenWay(way: string): Written {
  return written(behind(readTree(way, 'drawer'), 'path'));
}

/** A drawer document taken apart: each of its parts as a document of its own. The path is left. */
export function partsIn(text: string): readonly KeptPart[] {
  const tree = readTree(text, 'drawer');
  return partKinds.flatMap((kind) => {
    const list = behind(tree, listOf[kind]);
    const items = list.kind === 'list' ? list.items : [];
    return items.map((item) => ({
      kind,
      text: writeTree({ coreward: documentVersion, [listOf[kind]]: [written(item)] }),
    }));
  });
}

/**
 * The path of a launch or a drawer, as a drawer document of its own; `null` where it has none.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function wayIn(text: string): string | null {
  const path = behind(readTree(text, 'launch'), 'path');
  if (path.kind !== 'list' || path.items.length === 0) return null;
  return writeTree({ coreward: documentVersion, path: written(path) });
}

function keysOf({ kind, text }: KeptPart): Tree {
  const list = behind(readTree(text, 'drawer'), listOf[kind]);
  return (list.kind === 'list' ? list.items[0] : undefined) ?? nothing;
}

/** A tree as it may be written again; an empty place is left empty. */
function written(tree: Tree): Written {
  switch (tree.kind) {
    case 'text':
      return tree.text;
    case 'nothing':
      return '';
    case 'list':
      return tree.items.map(written);
    case 'map':
      return Object.fromEntries(tree.entries.map(({ key, value }) => [key, written(value)]));
  }
}
