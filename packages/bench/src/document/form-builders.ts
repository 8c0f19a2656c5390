import type { Dimension } from '../units/dimension.ts';
import { readTerm } from '../units/term.ts';
import type { Doubt } from './doubt.ts';
import type {
  Bound,
  CountForm,
  EitherForm,
  Form,
  Key,
  Keys,
  ListForm,
  MapForm,
  NameForm,
  QuantityAtForm,
  QuantityForm,
  Variant,
  WordForm,
} from './form.ts';

function bound(shows: string, dimension: Dimension): Bound {
  const term = readTerm(shows, dimension);
  if (!term.ok) throw new RangeError(`a form's bound: ${term.what}`);
  return { shows, value: term.value };
}

/** A lower bound as written: `200 nm` is allowed itself, `> 0 mm` is not. */
function lowerBound(text: string, dimension: Dimension): QuantityForm['lowest'] {
  const shows = text.replace(/^>\s*/u, '');
  return { ...bound(shows, dimension), included: shows === text };
}

/** `quantity('length', '> 0 mm', '1 m', plusMinus(0.05, '…'), '6.2 mm')`. */
export function quantity(
  dimension: Dimension,
  lowest: string,
  highest: string,
  doubt: Doubt,
  example: string | null = null,
): QuantityForm {
  return {
    kind: 'quantity',
    dimension,
    lowest: lowerBound(lowest, dimension),
    highest: bound(highest, dimension),
    doubt,
    example,
  };
}

/** A value, and the value of something else for which it is given, such as a wavelength. */
export function quantityAt(value: QuantityForm, at: QuantityForm, aboutAt: string): QuantityAtForm {
  return { kind: 'quantity at', value, at, aboutAt };
}

/** A whole number between two limits, both allowed. */
export function count(lowest: number, highest: number): CountForm {
  return { kind: 'count', lowest, highest };
}

/** One of a few words; an alias is read as the word it stands for. */
export function word<const W extends string>(
  words: readonly W[],
  aliases: Readonly<Record<string, W>> = {},
): WordForm<W> {
  return { kind: 'word', words, aliases };
}

/** What people call a thing: any text. */
export const nameForm: NameForm = { kind: 'name' };

/** Keys with their values; `variants` as in {@link MapForm}. */
export function map<const K extends Keys>(keys: K, variants: readonly Variant[] | null = null): MapForm<K> {
  return { kind: 'map', keys, variants };
}

/** Any number of equal things; `itemKey` as in {@link ListForm}. */
export function list<F extends Form>(item: F, itemKey: string | null = null): ListForm<F> {
  return { kind: 'list', item, itemKey };
}

/** `either(['none'], collimatorForm)`. */
export function either<const W extends string, F extends Form>(
  words: readonly W[],
  form: F,
): EitherForm<W, F> {
  return { kind: 'either', word: word(words), form };
}

/** A key that must be written. */
export function required<F extends Form>(about: string, form: F): Key<F, { readonly kind: 'required' }> {
  return { form, about, presence: { kind: 'required' } };
}

/** A key that is as good as written: `value` in the user's own writing, `why` this value. */
export function defaulting<F extends Form>(
  about: string,
  form: F,
  value: string,
  why: string,
): Key<F, { readonly kind: 'default'; readonly value: string; readonly why: string }> {
  return { form, about, presence: { kind: 'default', value, why } };
}

/** A key without which there is nothing; `meaning` says what is done then. */
export function optional<F extends Form>(
  about: string,
  form: F,
  meaning: string,
): Key<F, { readonly kind: 'optional'; readonly meaning: string }> {
  return { form, about, presence: { kind: 'optional', meaning } };
}
