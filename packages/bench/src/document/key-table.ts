import { dimensionFacts } from '../units/dimension.ts';
import { doubtText } from './doubt.ts';
import type { Form, Key, Keys, MapForm, QuantityForm } from './form.ts';
import { rangeText } from './range-text.ts';

/** A group of keys and every place where it may stand. */
interface Group {
  readonly form: MapForm<Keys>;
  readonly places: string[];
}

/**
 * Every key of a document as Markdown tables, one for each group of keys.
 *
 * @param elsewhere groups whose keys are listed in another document
 */
export function keyTables(form: MapForm<Keys>, elsewhere: readonly MapForm<Keys>[] = []): string {
  const groups: Group[] = [];
  collect(form, '', groups, new Set(elsewhere));
  return groups.map(table).join('\n\n');
}

/** Every group of keys in a form, itself included. */
export function groupsOf(form: MapForm<Keys>): readonly MapForm<Keys>[] {
  const groups: Group[] = [];
  collect(form, '', groups, new Set());
  return groups.map((group) => group.form);
}

function collect(form: Form, place: string, groups: Group[], elsewhere: ReadonlySet<Form>): void {
  switch (form.kind) {
    case 'quantity':
    case 'quantity at':
    case 'count':
    case 'word':
    case 'name':
      return;
    case 'list':
      collect(form.item, `${place}[]`, groups, elsewhere);
      return;
    case 'either':
      collect(form.form, place, groups, elsewhere);
      return;
    case 'map': {
      if (elsewhere.has(form)) return;
      const known = groups.find((group) => group.form === form);
      if (known !== undefined) {
        known.places.push(place);
        return;
      }
      groups.push({ form, places: [place] });
      for (const [name, key] of Object.entries(form.keys)) {
        collect(key.form, place === '' ? name : `${place}.${name}`, groups, elsewhere);
      }
    }
  }
}

function table({ form, places }: Group): string {
  const title = places[0] === '' ? 'The document' : places.map((place) => `\`${place}\``).join(' and ');
  const rows = Object.entries(form.keys).map(([name, key]) => row(name, key));
  return [
    `### ${title}`,
    '',
    ...variantsText(form),
    '| key | what it is | how it is written | left out | a bare value gets |',
    '|---|---|---|---|---|',
    ...rows,
  ].join('\n');
}

function variantsText({ variants }: MapForm<Keys>): string[] {
  if (variants === null) return [];
  const choices = variants.map(({ needs }) => needs.map((name) => `\`${name}\``).join(' with '));
  return [`One of these must stand: ${choices.join('; ')}.`, ''];
}

function row(name: string, { form, about, presence }: Key): string {
  const cells = [`\`${name}\``, about, writing(form), leftOut(presence), bare(form)];
  return `| ${cells.map((cell) => cell.replaceAll('|', '\\|')).join(' | ')} |`;
}

function leftOut(presence: Key['presence']): string {
  switch (presence.kind) {
    case 'required':
      return '**required**';
    case 'optional':
      return presence.meaning;
    case 'default':
      return presence.value === '{}' || presence.value === '[]'
        ? presence.why
        : `\`${presence.value}\`: ${presence.why}`;
  }
}

function writing(form: Form): string {
  switch (form.kind) {
    case 'quantity':
      return `${dimensionFacts[form.dimension].name}, ${rangeText(form)}`;
    case 'quantity at':
      return `${writing(form.value)}; with \`at\`: ${form.aboutAt}`;
    case 'count':
      return `a whole number, ${form.lowest} to ${form.highest}`;
    case 'word': {
      const aliases = Object.keys(form.aliases);
      const also = aliases.length === 0 ? '' : `; read too: ${codes(aliases)}`;
      return form.words.length > 20
        ? `one of ${form.words.length} words, listed below`
        : `${codes(form.words)}${also}`;
    }
    case 'name':
      return 'text';
    case 'map':
      return 'keys, see below';
    case 'list':
      return form.item.kind === 'map' ? 'a list, see below' : `a list of ${writing(form.item)}`;
    case 'either':
      return `${codes(form.word.words)}, or ${writing(form.form)}`;
  }
}

function bare(form: Form): string {
  const quantity: QuantityForm | null =
    form.kind === 'quantity'
      ? form
      : form.kind === 'quantity at'
        ? form.value
        : form.kind === 'either' && form.form.kind === 'quantity'
          ? form.form
          : null;
  return quantity === null ? '' : `${doubtText(quantity.doubt)}: ${quantity.doubt.why}`;
}

function codes(words: readonly string[]): string {
  return words.map((word) => `\`${word}\``).join(', ');
}
