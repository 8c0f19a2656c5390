import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import {
  cautionJson,
  cautionSections,
  cautionsFor,
  readLaunch,
  stepCautions,
  stepNames,
  stepSections,
} from '@coreward/bench';
import ts from 'typescript';
import { expect, test } from 'vitest';

/** Words that no result may use, as whole words: they promise what nobody here can. "laser safety officer" passes. */
const neverSaid =
  /\b(safe|safely|eye-safe|harmless|approved|compliant|certified)\b|no protection needed|\bok to look\b|\bis (an? )?class[- ](1M?|2M?|3R|3B|4)\b|\bclass[- ](1M?|2M?|3R|3B|4) laser\b/iu;

const checkout = new URL('..', import.meta.url).pathname;

/** Every source of words that can reach a screen or an output: all rooms but optics' tables, tests and built files left out. */
function sources(): readonly string[] {
  return ['optics', 'bench', 'contract', 'station', 'cli', 'web'].flatMap((room) =>
    filesIn(join(checkout, 'packages', room, 'src')),
  );
}

function filesIn(folder: string): readonly string[] {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((file) => /\.tsx?$/u.test(file) && !/\.(test|spec)\.tsx?$/u.test(file))
      .map((file) => join(folder, file));
  } catch {
    return []; // a room that is not there yet says nothing
  }
}

/** The words of a file: strings, templates and what stands between tags; no comments, no names. */
function words(file: string): readonly string[] {
  const text = readFileSync(file, 'utf8');
  // what does not stand in the file at all need not be looked for in its strings
  if (!neverSaid.test(text)) return [];
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true);
  const found: string[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isImportDeclaration(node) || ts.isExportDeclaration(node)) return;
    if (
      ts.isStringLiteralLike(node) ||
      ts.isTemplateHead(node) ||
      ts.isTemplateMiddleOrTemplateTail(node) ||
      ts.isJsxText(node)
    ) {
      found.push(node.text);
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

test('no text of any room uses a word that promises what nobody can', () => {
  const all = sources();
  expect(all.length).toBeGreaterThan(200);
  // what stands on screens is among it: the texts, and what is said between tags
  for (const screen of [
    'texts/cautions.ts',
    'texts/start.ts',
    'cautions/cautions-page.tsx',
    'launch/tag.tsx',
  ])
    expect(all).toContain(join(checkout, 'packages/web/src', screen));
  const slips = all.flatMap((file) =>
    words(file)
      .filter((text) => neverSaid.test(text))
      .map((text) => `${file.slice(checkout.length)}: ${text.slice(0, 120)}`),
  );
  expect(slips).toEqual([]);
});

test('no page and no example does either', () => {
  const pages = [
    'README.md',
    'CHANGELOG.md',
    ...readdirSync(join(checkout, 'docs')).map((name) => `docs/${name}`),
    ...readdirSync(join(checkout, 'examples')).map((name) => `examples/${name}`),
  ].filter((name) => /\.(md|yaml)$/u.test(name));
  const slips = pages.filter((name) => neverSaid.test(readFileSync(join(checkout, name), 'utf8')));
  expect(slips).toEqual([]);
});

test('the words are found where they stand', () => {
  for (const bad of [
    'this is safe',
    'Eye-safe.',
    'a harmless beam',
    'approved',
    'certified',
    'it is class 1',
    'a class 3B laser',
    'no protection needed',
  ]) {
    expect(bad).toMatch(neverSaid);
  }
  for (const good of [
    'laser safety officer',
    'would be treated like class 3B here',
    'unsafe',
    'cautions certify nothing',
    'the class 1 figure',
  ]) {
    expect(good).not.toMatch(neverSaid);
  }
});

const bench = (laser: string, rest = '') =>
  readLaunch(
    `coreward: 1\nlaser: { ${laser}, beam: { diameter: 1.1 mm, at: 300 mm } }\ncollimator: { focal length: 8 mm }\nfibre: { type: OM2, attenuation: 3 dB/km }\n${rest}`,
    'bench',
  );

test('no caution that is computed does, from ultraviolet to infrared, from microwatts to watts', () => {
  for (const nm of [375, 405, 532, 785, 1310, 1550]) {
    for (const power of ['1 µW', '5 mW', '2 W']) {
      const launch = bench(
        `wavelength: ${nm} nm, power: ${power}`,
        'reference: { wavelength: 635 nm, power: 1 mW }',
      );
      const cautions = cautionsFor(launch);
      const said = JSON.stringify([
        cautionSections(cautions),
        cautionJson(cautions),
        (power === '5 mW' ? stepNames : []).map((step) => stepSections(stepCautions(launch, step))),
      ]);
      expect(said).not.toMatch(neverSaid);
      expect(said).not.toMatch(/NaN|undefined|Infinity/u);
    }
  }
});
