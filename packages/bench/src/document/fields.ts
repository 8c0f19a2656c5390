import type { Origin } from '../quantity/quantity.ts';
import { origins } from '../quantity/quantity.ts';
import { type Dimension, dimensionFacts } from '../units/dimension.ts';
import { behind } from './behind.ts';
import { doubtText } from './doubt.ts';
import { exampleOf } from './example-of.ts';
import type { Form, Key, Keys, MapForm, QuantityForm, Variant } from './form.ts';
import { rangeText } from './range-text.ts';
import type { Written } from './write-tree.ts';
import type { Tree } from './yaml-tree.ts';

/** The way to a place in a document: keys, and ranks in lists (from 0). */
export type FieldPath = readonly (string | number)[];

/** What stands for a place where nothing is written. */
export type Absence =
  | { readonly kind: 'required' }
  | { readonly kind: 'default'; readonly value: string; readonly why: string }
  | { readonly kind: 'optional'; readonly meaning: string };

interface Place {
  readonly path: FieldPath;
  /** As its user spells it; of a list's item the rank, from 1. */
  readonly key: string;
  readonly about: string;
  readonly leftOut: Absence;
}

/** A quantity as it stands in a document, text by text. */
export interface WrittenQuantity {
  readonly text: string;
  readonly origin: Origin | null;
  readonly note: string | null;
  /** Where it holds; only where the form has such a key. */
  readonly at: string | null;
}

/** A value with a unit. */
export interface QuantityField extends Place {
  readonly kind: 'quantity';
  readonly dimension: Dimension;
  /** "a length, 200 nm to 12 µm". */
  readonly writing: string;
  readonly example: string;
  /** What a bare value gets, and why: "± 10 %: what labels are good for". */
  readonly bare: string;
  /** Words that may stand instead, such as `none`. */
  readonly words: readonly string[];
  /** What the value's own `at` is, and how it looks; `null`: it has none. */
  readonly at: { readonly about: string; readonly example: string } | null;
  readonly written: WrittenQuantity | null;
}

/** One word out of a few. */
export interface WordField extends Place {
  readonly kind: 'word';
  readonly words: readonly string[];
  readonly written: string | null;
}

/** A name, or a whole number. */
export interface TextField extends Place {
  readonly kind: 'name' | 'count';
  readonly example: string;
  readonly written: string | null;
}

/** Keys that belong together, or a word that stands instead of them. */
export interface GroupField extends Place {
  readonly kind: 'group';
  /** Words that may stand instead, such as `none`. */
  readonly words: readonly string[];
  /** The word that stands instead, or whether anything stands at all. */
  readonly written: 'keys' | 'nothing' | { readonly word: string };
  readonly fields: readonly FieldNode[];
  /** Descriptions that exclude each other; `null`: all keys go together. */
  readonly variants: readonly Variant[] | null;
  /** Which of them the keys written belong to: the first that allows them all; 0 where none does. */
  readonly variant: number;
  /** The least that may stand here, to begin with. */
  readonly begin: Written;
}

/** A list of equal things. */
export interface ListField extends Place {
  readonly kind: 'list';
  readonly items: readonly FieldNode[];
  /** Items in writing, to begin a new one with: by name where there are several kinds, else one without a name. */
  readonly newItems: readonly { readonly name: string; readonly written: Written }[];
}

/** What may be filled in at one place of a document, and what stands there. */
export type FieldNode = QuantityField | WordField | TextField | GroupField | ListField;

/** The fields of a document that `form` describes: what every key is, what is written there, and what stands for it if not. */
export function fieldsOf(form: Form, tree: Tree, place: Place): FieldNode {
  switch (form.kind) {
    case 'quantity':
      return quantityField(form, null, [], tree, place);
    case 'quantity at':
      return quantityField(form.value, { about: form.aboutAt, example: exampleOf(form.at) }, [], tree, place);
    case 'count':
    case 'name':
      return { ...place, kind: form.kind, example: exampleOf(form), written: textOf(tree) };
    case 'word':
      return { ...place, kind: 'word', words: form.words, written: textOf(tree) };
    case 'map':
      return groupField(form, [], tree, place);
    case 'list':
      return {
        ...place,
        kind: 'list',
        newItems: beginnings(form.item),
        items: (tree.kind === 'list' ? tree.items : []).map((item, index) =>
          fieldsOf(form.item, item, {
            path: [...place.path, index],
            key: `${index + 1}`,
            about: '',
            leftOut: { kind: 'required' },
          }),
        ),
      };
    case 'either': {
      const node = fieldsOf(form.form, tree, place);
      const { words } = form.word;
      if (node.kind === 'quantity') return { ...node, words };
      if (node.kind !== 'group') return node;
      const text = textOf(tree);
      return { ...node, words, written: text === null ? node.written : { word: text } };
    }
  }
}

/** A written quantity as it stands in a document: the bare text where there is no more to say. */
export function writtenQuantity({ text, origin, note, at }: WrittenQuantity): Written {
  const bare = origin === null && note === null && at === null;
  return bare ? text : { value: text, at, origin, note };
}

/** The field at a path; `null` where there is none. */
export function fieldAt(node: FieldNode, path: FieldPath): FieldNode | null {
  const steps = path.slice(node.path.length);
  const [step] = steps;
  if (step === undefined) return node;
  const children = node.kind === 'group' ? node.fields : node.kind === 'list' ? node.items : [];
  const child = children.find((candidate) => candidate.path.at(-1) === step);
  return child === undefined ? null : fieldAt(child, path);
}

function quantityField(
  form: QuantityForm,
  at: QuantityField['at'],
  words: readonly string[],
  tree: Tree,
  place: Place,
): QuantityField {
  return {
    ...place,
    kind: 'quantity',
    dimension: form.dimension,
    writing: `${dimensionFacts[form.dimension].name}, ${rangeText(form)}`,
    example: exampleOf(form),
    bare: `${doubtText(form.doubt)}: ${form.doubt.why}`,
    words,
    at,
    written: quantityIn(tree),
  };
}

function quantityIn(tree: Tree): WrittenQuantity | null {
  if (tree.kind === 'text') return { text: tree.text, origin: null, note: null, at: null };
  if (tree.kind !== 'map') return null;
  const told = (key: string): string | null => textOf(behind(tree, key));
  return {
    text: told('value') ?? '',
    origin: origins.find((origin) => origin === told('origin')) ?? null,
    note: told('note'),
    at: told('at'),
  };
}

function groupField(form: MapForm<Keys>, words: readonly string[], tree: Tree, place: Place): GroupField {
  const { keys, variants } = form;
  const written = tree.kind === 'map' ? tree.entries.map(({ key }) => key) : [];
  const constrained = new Set(variants?.flatMap(({ needs, allows }) => [...needs, ...allows]));
  const choosing = written.filter((key) => constrained.has(key));
  const fits = ({ needs, allows }: Variant): boolean =>
    choosing.every((key) => needs.includes(key) || allows.includes(key)) &&
    (choosing.length === 0 || needs.some((key) => choosing.includes(key)));
  return {
    ...place,
    kind: 'group',
    words,
    written: tree.kind === 'map' ? 'keys' : 'nothing',
    variants,
    variant: Math.max(0, variants?.findIndex(fits) ?? 0),
    begin: beginning(form),
    fields: Object.entries(keys).map(([name, key]) =>
      fieldsOf(key.form, behind(tree, name), placeOf(name, key, place)),
    ),
  };
}

function placeOf(name: string, { about, presence }: Key, { path }: Place): Place {
  return { path: [...path, name], key: name, about, leftOut: presence };
}

const textOf = (tree: Tree): string | null => (tree.kind === 'text' ? tree.text : null);

/** A list of elements that are each one thing or another begins with any of them. */
function beginnings(item: Form): ListField['newItems'] {
  const variants = item.kind === 'map' ? item.variants : null;
  if (
    item.kind !== 'map' ||
    variants?.every(({ needs, allows }) => needs.length === 1 && allows.length === 0) !== true
  ) {
    return [{ name: '', written: beginning(item) }];
  }
  return variants.map(({ needs }, index) => ({ name: needs[0] ?? '', written: beginning(item, index) }));
}

/** The least that may stand for a form, by the forms' own examples. */
function beginning(form: Form, variant = 0): Written {
  switch (form.kind) {
    case 'map': {
      const needs = form.variants?.[variant]?.needs ?? [];
      return Object.fromEntries(
        Object.entries(form.keys)
          .filter(([name, { presence }]) => presence.kind === 'required' || needs.includes(name))
          .map(([name, key]) => [name, beginning(key.form)]),
      );
    }
    case 'list':
      return [beginning(form.item)];
    default:
      return exampleOf(form);
  }
}
