import { type FieldNode, type FieldPath, fieldsOf } from '../document/fields.ts';
import type { Written } from '../document/write-tree.ts';
import { writeTree } from '../document/write-tree.ts';
import { readTree } from '../document/yaml-tree.ts';
import type { PathElement } from '../launch/launch.ts';
import { launchForm } from '../launch/launch-form.ts';
import { Refusal, type RefusalParts } from '../refusal.ts';
import type { Drawer } from './drawer.ts';
import { drawerForm } from './drawer-form.ts';
import { readDrawer } from './read-drawer.ts';

/** The lists of a drawer, each by the kind of part that lies in it. */
const listOf = {
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

/** A part as it is kept: its keys as they would stand in a drawer document, YAML with its name. */
export interface KeptPart {
  readonly kind: PartKind;
  readonly text: string;
}

/** One thing that is refused, and the place it concerns: `beam.diameter`, ranks in lists from 1; empty: the whole. */
export interface RefusedPlace {
  readonly place: string;
  readonly what: string;
  readonly mend: string;
}

/**
 * The drawer that parts make together.
 *
 * @param path the way from any laser to any collimator
 * @throws {Refusal} with all that is refused in any of them
 */
export function drawerOfParts(parts: readonly KeptPart[], path: readonly PathElement[]): Drawer {
  const drawer = readDrawer(
    parts.map(({ kind, text }) => ({ text: asDocument(kind, text), file: 'drawer' })),
  );
  return { ...drawer, name: 'drawer', path };
}

/** The name of a part that can be read, and what is refused of it if it cannot. */
export function readPart({ kind, text }: KeptPart): {
  readonly name: string;
  readonly refused: readonly RefusedPlace[];
} {
  try {
    const drawer = readDrawer([{ text: asDocument(kind, text), file: 'drawer' }]);
    return { name: drawer[listOf[kind]][0]?.name ?? '', refused: [] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const within = `${listOf[kind]}.1`;
    return {
      name: '',
      refused: placesRefused(error).map((refused) => ({
        ...refused,
        place: refused.place === within ? '' : refused.place.replace(`${within}.`, ''),
      })),
    };
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
 * What may be filled in for a part, and what is written.
 *
 * @throws {Refusal} if the text is not YAML
 */
export function partFields({ kind, text }: KeptPart): FieldNode {
  const { item } = drawerForm.keys[listOf[kind]].form;
  return fieldsOf(item, readTree(text, kind), {
    path: [],
    key: kind,
    about: '',
    leftOut: { kind: 'required' },
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

/** A part's text with nothing but what is given. */
export function newPart(kind: PartKind, keys: { readonly [key: string]: Written | null }): KeptPart {
  return { kind, text: writeTree(keys) };
}

/** The text behind one list's only item, as a drawer document; its lines stay lines. */
function asDocument(kind: PartKind, text: string): string {
  const inset = text
    .split('\n')
    .map((line) => (line === '' ? '' : `    ${line}`))
    .join('\n');
  return `coreward: 1\n${listOf[kind]}:\n  -\n${inset}`;
}
