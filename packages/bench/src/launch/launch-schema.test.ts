import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { parse } from 'yaml';
import { drawerKeyTables, drawerSchema } from '../drawer/drawer-schema.ts';
import { readDrawer } from '../drawer/read-drawer.ts';
import { fiveLinesLaunch, observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import { launchKeyTables, launchSchema } from './launch-schema.ts';
import { readLaunch } from './read-launch.ts';

type Json = { readonly [keyword: string]: unknown };

/**
 * What a value breaks of a schema: the keywords of JSON Schema 2020-12 that ours use, after its specification
 * (from memory). Throws at a keyword that it does not know, so that nothing passes unchecked.
 */
function broken(schema: unknown, value: unknown, root: Json, at = '$'): string[] {
  if (schema === false) return [`${at} may not be`];
  if (schema === true) return [];
  return Object.entries(schema as Json).flatMap(([keyword, says]): string[] => {
    const object =
      typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Json) : null;
    switch (keyword) {
      case '$schema':
      case '$defs':
      case 'title':
      case 'description':
      case 'default':
      case 'examples':
        return [];
      case '$ref':
        return broken((root.$defs as Json)[String(says).replace('#/$defs/', '')], value, root, at);
      case 'type': {
        const is = Array.isArray(value) ? 'array' : typeof value;
        const matches = [says]
          .flat()
          .some((type) => (type === 'integer' ? Number.isInteger(value) : type === is));
        return matches ? [] : [`${at} is ${is}, not ${says}`];
      }
      case 'enum':
        return (says as unknown[]).includes(value) ? [] : [`${at} is not among ${JSON.stringify(says)}`];
      case 'pattern':
        return typeof value !== 'string' || new RegExp(String(says), 'u').test(value)
          ? []
          : [`${at} has no number`];
      case 'maxLength':
        return typeof value !== 'string' || value.length <= Number(says) ? [] : [`${at} is too long`];
      case 'minimum':
        return typeof value !== 'number' || value >= Number(says) ? [] : [`${at} is too small`];
      case 'maximum':
        return typeof value !== 'number' || value <= Number(says) ? [] : [`${at} is too large`];
      case 'required':
        return (says as string[])
          .filter((key) => object !== null && !Object.hasOwn(object, key))
          .map((key) => `${at}.${key} is missing`);
      case 'properties':
        return Object.entries(object ?? {}).flatMap(([key, inner]) =>
          Object.hasOwn(says as Json, key) ? broken((says as Json)[key], inner, root, `${at}.${key}`) : [],
        );
      case 'additionalProperties': {
        const known = (schema as Json).properties as Json;
        return Object.keys(object ?? {})
          .filter((key) => !Object.hasOwn(known, key))
          .map((key) => `${at}.${key} is unknown`);
      }
      case 'items':
        return Array.isArray(value)
          ? value.flatMap((item, i) => broken(says, item, root, `${at}[${i}]`))
          : [];
      case 'maxItems':
        return !Array.isArray(value) || value.length <= Number(says) ? [] : [`${at} has too many items`];
      case 'anyOf': {
        const tries = (says as unknown[]).map((choice) => broken(choice, value, root, at));
        return tries.some((problems) => problems.length === 0) ? [] : tries.flat();
      }
      case 'oneOf': {
        const fits = (says as unknown[]).filter((choice) => broken(choice, value, root, at).length === 0);
        return fits.length === 1 ? [] : [`${at} fits ${fits.length} descriptions`];
      }
      default:
        throw new Error(`the keyword ${keyword} is not checked here`);
    }
  });
}

const docs = (name: string): string =>
  readFileSync(new URL(`../../../../docs/${name}`, import.meta.url), 'utf8');
const yamlIn = (text: string): string[] =>
  [...text.matchAll(/^```yaml\n([\s\S]*?)^```/gmu)].map(([, yaml]) => yaml!);
const launchDocs = docs('launch-document.md');
const drawerDocs = docs('drawer-document.md');

const launches = [observingLoftLaunch, fiveLinesLaunch, ...yamlIn(launchDocs)];
const drawers = [observingLoftDrawer, ...yamlIn(drawerDocs)];

test('the documents show launches and drawers', () => {
  expect(launches).toHaveLength(4);
  expect(drawers).toHaveLength(2);
});

launches.forEach((text, index) => {
  test(`launch ${index + 1} of examples and documents is read, and fits the schema`, () => {
    expect(readLaunch(text, 'launch.yaml').fibre.coreDiameter.value).toBeGreaterThan(0);
    expect(broken(launchSchema(), parse(text), launchSchema() as Json)).toEqual([]);
  });
});

drawers.forEach((text, index) => {
  test(`drawer ${index + 1} of examples and documents is read, and fits the schema`, () => {
    expect(readDrawer([{ text, file: 'drawer.yaml' }]).lasers.length).toBeGreaterThan(0);
    expect(broken(drawerSchema(), parse(text), drawerSchema() as Json)).toEqual([]);
  });
});

const misfits: readonly (readonly [name: string, change: (text: string) => string, problem: RegExp])[] = [
  ['an unknown key', (text) => text.replace('focal length:', 'focal lenght:'), /focal lenght is unknown/],
  ['a missing key', (text) => text.replace(/ {2}wavelength.*\n/u, ''), /laser\.wavelength is missing/],
  ['another version', (text) => text.replace('coreward: 1', 'coreward: 2'), /coreward is not among/],
  [
    'a bare number for a length',
    (text) => text.replace('length: 18 m', 'length: 18'),
    /fibre\.length is number/,
  ],
  ['two beams at once', (text) => text.replace('waist position: 0 mm', 'divergence: 1 mrad'), /beam fits 0/],
  [
    'an element that is two',
    (text) => text.replace('- space: 210 mm', '- { space: 1 mm, stop: { diameter: 1 mm } }'),
    /path\[0\] fits 0/,
  ],
  ['a word nobody knows', (text) => text.replace('profile: step', 'profile: steps'), /profile is not among/],
];

for (const [name, change, problem] of misfits) {
  test(`the schema does not let ${name} pass, and neither does the reader`, () => {
    const text = change(observingLoftLaunch);
    expect(broken(launchSchema(), parse(text), launchSchema() as Json).join('\n')).toMatch(problem);
    expect(() => readLaunch(text, 'x')).toThrow();
  });
}

test('the key tables of the documents are the ones that the forms give', () => {
  const tables = (text: string): string =>
    /<!-- keys: .*? -->\n\n([\s\S]*?)\n\n<!-- end of keys -->/u.exec(text)?.[1] ?? '';
  expect(tables(launchDocs)).toBe(launchKeyTables());
  expect(tables(drawerDocs)).toBe(drawerKeyTables());
});

test('every key of a launch stands in its table, required or with what happens without it', () => {
  const rows = launchKeyTables()
    .split('\n')
    .filter((line) => line.startsWith('| `'));
  expect(rows.length).toBeGreaterThan(60);
  for (const row of rows) {
    const cells = row.split(/(?<!\\)\|/u).map((cell) => cell.trim());
    expect(cells).toHaveLength(7);
    for (const cell of cells.slice(1, 5)) expect(cell, row).not.toBe('');
  }
});

test('the example texts are the files of examples/', () => {
  const example = (name: string): string =>
    readFileSync(new URL(`../../../../examples/${name}`, import.meta.url), 'utf8');
  expect(observingLoftLaunch).toBe(example('observing-loft.launch.yaml'));
  expect(observingLoftDrawer).toBe(example('observing-loft.drawer.yaml'));
  expect(fiveLinesLaunch).toBe(example('five-lines.launch.yaml'));
});

test('the refusal that the document shows is the one that is given', () => {
  const shown = /```text\n(.*)\n```/u.exec(launchDocs)?.[1] ?? '';
  const whole = yamlIn(launchDocs)[1]!;
  const broken = whole.replace('{ value: 6.2 mm, at: 635 nm }', '6.2');
  expect(() => readLaunch(broken, 'launch.yaml')).toThrow(shown);
});
