import { dimensionFacts } from '../units/dimension.ts';
import type { Form } from './form.ts';

/** Something short that may stand at a place of this form, for a mend that works if followed to the letter. */
export function exampleOf(form: Form): string {
  switch (form.kind) {
    case 'quantity': {
      const { examples } = dimensionFacts[form.dimension];
      return form.example ?? examples[0];
    }
    case 'quantity at':
      return exampleOf(form.value);
    case 'count':
      return String(form.lowest);
    case 'word':
      return form.words[0] ?? '';
    case 'name':
      return 'a name';
    case 'map': {
      const needs = form.variants?.[0]?.needs ?? [];
      const keys = Object.entries(form.keys)
        .filter(([name, { presence }]) => presence.kind === 'required' || needs.includes(name))
        .map(([name, key]) => `${name}: ${exampleOf(key.form)}`);
      if (keys.length > 0) return `{ ${keys.join(', ')} }`;
      // all may be left out: the first key shows what the part is about
      const [first] = Object.entries(form.keys).map(
        ([name, { form: inner }]) => `${name}: ${longExampleOf(inner)}`,
      );
      return first === undefined ? '{}' : `{ ${first} }`;
    }
    case 'list':
      return `[ ${exampleOf(form.item)} ]`;
    case 'either':
      return form.word.words[0] ?? exampleOf(form.form);
  }
}

/** The same, where a word would say nothing about what else may stand there. */
const longExampleOf = (form: Form): string => exampleOf(form.kind === 'either' ? form.form : form);
