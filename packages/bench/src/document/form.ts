import type { Entry } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import type { Doubt } from './doubt.ts';

/**
 * What may stand at a place of a document. Reading, the JSON Schema and the key tables all follow from forms, so that
 * they cannot contradict each other.
 */
export type Form =
  | QuantityForm
  | QuantityAtForm
  | CountForm
  | WordForm<string>
  | NameForm
  | MapForm<Keys>
  | ListForm<Form>
  | EitherForm<string, Form>;

/** A bound of a quantity, as the user writes it and in SI. */
export interface Bound {
  readonly shows: string;
  readonly value: number;
}

/** `6.2 mm`, `6.2 mm ± 2 %`, `6.2 mm within 2 %`, or a map of `value`, `origin` and `note`. */
export interface QuantityForm {
  readonly kind: 'quantity';
  readonly dimension: Dimension;
  /** `included`: the bound itself is allowed. */
  readonly lowest: Bound & { readonly included: boolean };
  readonly highest: Bound;
  /** What a bare value gets. */
  readonly doubt: Doubt;
  /** Of the order one expects here, where the dimension's own example would mislead; `null`: it does not. */
  readonly example: string | null;
}

/** A quantity whose map may say where it holds: `{ value: 6.2 mm, at: 635 nm }`. */
export interface QuantityAtForm {
  readonly kind: 'quantity at';
  readonly value: QuantityForm;
  readonly at: QuantityForm;
  readonly aboutAt: string;
}

/** A whole number. */
export interface CountForm {
  readonly kind: 'count';
  readonly lowest: number;
  readonly highest: number;
}

/** One of a few words. `aliases` are read as the word they lead to. */
export interface WordForm<W extends string> {
  readonly kind: 'word';
  readonly words: readonly W[];
  readonly aliases: Readonly<Record<string, W>>;
}

/** Text for people. */
export interface NameForm {
  readonly kind: 'name';
}

/** Keys with their values. */
export interface MapForm<K extends Keys> {
  readonly kind: 'map';
  readonly keys: K;
  /** Descriptions that exclude each other; exactly one of them must stand. `null`: all keys go together. */
  readonly variants: readonly Variant[] | null;
}

/** One of several descriptions of the same thing, by the names of its keys. */
export interface Variant {
  /** All of these. */
  readonly needs: readonly string[];
  /** And none but these. */
  readonly allows: readonly string[];
}

/** Any number of equal things, in their order. */
export interface ListForm<F extends Form> {
  readonly kind: 'list';
  readonly item: F;
  /** The key that entries of an item begin with, if not by the list and the item's rank: a part keeps its keys wherever it is listed. */
  readonly itemKey: string | null;
}

/** A word such as `none`, or something longer. */
export interface EitherForm<W extends string, F extends Form> {
  readonly kind: 'either';
  readonly word: WordForm<W>;
  readonly form: F;
}

/** Whether a key must be written, and what holds where it is not. */
export type Presence =
  | { readonly kind: 'required' }
  /** `value` as the user would have written it; `{}` and `[]` for a map and a list. */
  | { readonly kind: 'default'; readonly value: string; readonly why: string }
  /** Stands for nothing; `meaning` says what is done without it. */
  | { readonly kind: 'optional'; readonly meaning: string };

/** One key of a map: its form, its presence and its explanation. */
export interface Key<F extends Form = Form, P extends Presence = Presence> {
  readonly form: F;
  readonly presence: P;
  /** What it is, in a few words. */
  readonly about: string;
}

/** The keys of a map by their names, as users write them. */
export type Keys = Readonly<Record<string, Key>>;

/** What reading a form gives. Keys that may be left out without a default give `null`. */
export type Read<F> = F extends QuantityForm
  ? Entry
  : F extends QuantityAtForm
    ? EntryAt
    : F extends CountForm
      ? number
      : F extends WordForm<infer W>
        ? W
        : F extends NameForm
          ? string
          : F extends MapForm<infer K>
            ? { readonly [Name in keyof K]: ReadKey<K[Name]> }
            : F extends ListForm<infer I>
              ? readonly Read<I>[]
              : F extends EitherForm<infer W, infer I>
                ? W | Read<I>
                : never;

/** What reading a key gives: null where it was optional and left out. */
export type ReadKey<K> =
  K extends Key<infer F, infer P> ? (P extends { kind: 'optional' } ? Read<F> | null : Read<F>) : never;

/** An entry, and where it holds if the document says so. */
export interface EntryAt {
  readonly entry: Entry;
  readonly at: Entry | null;
}
