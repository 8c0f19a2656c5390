import { origins } from '../quantity/quantity.ts';
import { type Dimension, dimensionFacts } from '../units/dimension.ts';
import { exampleOf } from './example-of.ts';
import type { Form, Key, Keys, MapForm, WordForm } from './form.ts';
import { longestList, longestName, longestNote } from './lengths.ts';
import { rangeText } from './range-text.ts';

/** A JSON Schema, or a part of one. */
export type Schema = boolean | { readonly [keyword: string]: unknown };

/**
 * The JSON Schema of a document: its structure, words and counts. That a quantity's text has the right unit and a
 * possible value is beyond what a schema can say; reading the document checks it.
 *
 * @source JSON Schema, draft 2020-12 (json-schema.org); from memory
 */
export function schemaOf(form: Form, title: string): Schema {
  const dimensions = new Set<Dimension>();
  const root = schema(form, dimensions);
  return {
    $schema: 'https://json-schema.org/draft/2020-12/schema',
    title,
    ...(root as object),
    $defs: Object.fromEntries([...dimensions].sort().map((name) => [name, quantitySchema(name)])),
  };
}

function schema(form: Form, dimensions: Set<Dimension>): Schema {
  switch (form.kind) {
    case 'quantity':
      dimensions.add(form.dimension);
      return { $ref: `#/$defs/${form.dimension}`, examples: [exampleOf(form)] };
    case 'quantity at':
      dimensions.add(form.value.dimension);
      dimensions.add(form.at.dimension);
      return {
        anyOf: [
          { $ref: `#/$defs/${form.value.dimension}` },
          toldSchema(form.value.dimension, {
            at: { ...(schema(form.at, dimensions) as object), description: form.aboutAt },
          }),
        ],
        examples: [exampleOf(form)],
      };
    case 'count':
      return { type: 'integer', minimum: form.lowest, maximum: form.highest };
    case 'word':
      return { enum: spellings(form) };
    case 'name':
      return { type: ['string', 'number', 'boolean'], maxLength: longestName };
    case 'map':
      return mapSchema(form, dimensions);
    case 'list':
      return { type: 'array', items: schema(form.item, dimensions), maxItems: longestList };
    case 'either':
      return { anyOf: [{ enum: spellings(form.word) }, schema(form.form, dimensions)] };
  }
}

function mapSchema({ keys, variants }: MapForm<Keys>, dimensions: Set<Dimension>): Schema {
  const names = Object.keys(keys);
  const needed = names.filter((name) => keys[name]?.presence.kind === 'required');
  return {
    type: 'object',
    properties: Object.fromEntries(
      Object.entries(keys).map(([name, key]) => [
        name,
        { ...(schema(key.form, dimensions) as object), ...annotations(key) },
      ]),
    ),
    ...(needed.length > 0 ? { required: needed } : {}),
    additionalProperties: false,
    ...(variants === null
      ? {}
      : {
          oneOf: variants.map(({ needs, allows }) => ({
            ...(needs.length > 0 ? { required: needs } : {}),
            properties: Object.fromEntries(
              names
                .filter((name) => !needs.includes(name) && !allows.includes(name))
                .map((name) => [name, false]),
            ),
          })),
        }),
  };
}

function annotations({ form, about, presence }: Key): object {
  const quantity = form.kind === 'quantity' ? form : form.kind === 'quantity at' ? form.value : null;
  const range = quantity === null ? '' : `; ${rangeText(quantity)}`;
  switch (presence.kind) {
    case 'required':
      return { description: `${about}${range}` };
    case 'optional':
      return { description: `${about}${range}. Left out: ${presence.meaning}` };
    case 'default':
      return {
        description: `${about}${range}. Left out: ${presence.value}; ${presence.why}`,
        ...(presence.value === '{}'
          ? { default: {} }
          : presence.value === '[]'
            ? { default: [] }
            : { default: presence.value }),
      };
  }
}

/** Words that look like numbers are numbers to most readers of JSON. */
function spellings({ words, aliases }: WordForm<string>): readonly (string | number)[] {
  const all = [...words, ...Object.keys(aliases)];
  return [...all, ...all.filter((word) => /^\d+$/u.test(word)).map(Number)];
}

function quantitySchema(dimension: Dimension): Schema {
  const { name, examples } = dimensionFacts[dimension];
  return {
    title: name,
    examples,
    anyOf: [...plainQuantity(dimension), toldSchema(dimension)],
  };
}

/** A text with a number in it; a bare number too where the dimension has no unit. */
function plainQuantity(dimension: Dimension): Schema[] {
  const text = { type: 'string', pattern: '[0-9]', maxLength: 200 };
  return dimensionFacts[dimension].kinds.includes('') ? [text, { type: 'number' }] : [text];
}

function toldSchema(dimension: Dimension, more: { readonly [key: string]: Schema } = {}): Schema {
  return {
    type: 'object',
    properties: {
      value: { anyOf: plainQuantity(dimension) },
      origin: { enum: origins },
      note: { type: ['string', 'number', 'boolean'], maxLength: longestNote },
      ...more,
    },
    required: ['value'],
    additionalProperties: false,
  };
}
