import { mustBeOfThisVersion, mustNotBe, type OtherKind } from '../document/document-kind.ts';
import type { Read } from '../document/form.ts';
import { whereIs } from '../document/place.ts';
import { readForm } from '../document/read-form.ts';
import { documentSpot, itemSpot, type Report, reportOn, throwIfRefused, under } from '../document/report.ts';
import { printable, shown } from '../document/shown.ts';
import { readTree, type Tree } from '../document/yaml-tree.ts';
import { collimatorFrom } from '../launch/read-collimator.ts';
import { fibreFrom } from '../launch/read-fibre.ts';
import { laserFrom } from '../launch/read-laser.ts';
import { referenceFrom } from '../launch/read-launch.ts';
import { mirrorFrom, pathFrom } from '../launch/read-path.ts';
import { Refusal, type RefusalParts } from '../refusal.ts';
import type { Drawer } from './drawer.ts';
import { drawerForm } from './drawer-form.ts';

/** A document and the name it goes by in refusals. */
export interface NamedText {
  readonly text: string;
  readonly file: string;
}

/** One file of a drawer, read, with what it refuses so far. */
interface Compartment {
  readonly drawer: Drawer;
  readonly hasName: boolean;
  readonly hasPath: boolean;
  readonly file: string;
  readonly report: Report;
}

/** The lists of a drawer whose parts are asked for by name. */
const partLists = ['lasers', 'collimators', 'fibres', 'mirrors', 'detectors', 'references'] as const;

/**
 * One drawer out of one or more documents: their parts together, the name and the path from whichever has one.
 *
 * @throws {Refusal} with everything that is refused in any of them, names given twice and a second path included
 */
export function readDrawer(files: readonly NamedText[]): Drawer {
  const refusals: RefusalParts[] = [];
  const compartments = files.flatMap(({ text, file }, index) => {
    try {
      mustBeAnother({ text, file }, files.slice(0, index));
      return [compartmentFrom(text, file)];
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      refusals.push(...error.parts);
      return [];
    }
  });
  mustHaveOneOfEachName(compartments);
  mustHaveOnePath(compartments);
  throwIfRefused([...refusals, ...compartments.flatMap(({ report }) => report.refusals())]);
  const together = <T>(list: (drawer: Drawer) => readonly T[]): readonly T[] =>
    compartments.flatMap(({ drawer }) => list(drawer));
  return {
    name: compartments.find(({ hasName }) => hasName)?.drawer.name ?? unnamed,
    lasers: together(({ lasers }) => lasers),
    collimators: together(({ collimators }) => collimators),
    fibres: together(({ fibres }) => fibres),
    mirrors: together(({ mirrors }) => mirrors),
    detectors: together(({ detectors }) => detectors),
    references: together(({ references }) => references),
    path: together(({ path }) => path),
  };
}

/** One refusal for a file that is named twice, or copied, where every part of it would be refused. */
function mustBeAnother({ text, file }: NamedText, before: readonly NamedText[]): void {
  const same = before.find((one) => one.text === text);
  if (same === undefined) return;
  throw new Refusal({
    where: printable(file),
    what: `it holds word for word what ${printable(same.file)} holds`,
    mend: 'Name only one of the two.',
  });
}

function compartmentFrom(text: string, file: string): Compartment {
  const report = reportOn(file);
  const tree = readTree(text, file);
  mustBeKeys(tree, file);
  mustNotBe(launch, tree, file);
  mustBeOfThisVersion(tree, file);
  const read = readForm(drawerForm, tree, documentSpot, report);
  return {
    drawer: drawerFrom(read, report),
    hasName: read.name !== null,
    hasPath: read.path !== null,
    file,
    report,
  };
}

/** A file that holds no keys at all is told what a drawer is made of, for all of them may be left out. */
function mustBeKeys(tree: Tree, file: string): void {
  if (tree.kind === 'map') return;
  const holds = { text: 'text', list: 'a list', nothing: 'nothing' } as const;
  throw new Refusal({
    where: whereIs(file, tree.at, ''),
    what: `${holds[tree.kind]} stands where a drawer belongs`,
    mend: 'Write `coreward: 1`, and below it the lists `lasers`, `collimators` and `fibres`, each part with a name.',
  });
}

const launch: OtherKind = {
  is: 'a launch, not a drawer',
  keys: ['laser', 'collimator', 'fibre'],
  mend: 'Write the parts into the lists `lasers`, `collimators` and `fibres`, each with a name.',
};

const unnamed = 'unnamed drawer';

function drawerFrom(read: Read<typeof drawerForm>, report: Report): Drawer {
  const spotOf = (list: (typeof partLists)[number], index: number) =>
    itemSpot(under(documentSpot, list), drawerForm.keys[list].form.itemKey, index + 1);
  return {
    name: read.name ?? unnamed,
    lasers: read.lasers.map((laser, index) => ({
      ...laserFrom(laser, spotOf('lasers', index), report),
      name: laser.name,
    })),
    collimators: read.collimators.map((collimator, index) => ({
      ...collimatorFrom(collimator, spotOf('collimators', index), report),
      name: collimator.name,
    })),
    fibres: read.fibres.map((fibre, index) => ({
      ...fibreFrom(fibre, spotOf('fibres', index), report),
      name: fibre.name,
    })),
    mirrors: read.mirrors.map((mirror) => mirrorFrom(mirror, mirror.name)),
    detectors: read.detectors.map(({ name, kind, responsivity, load, 'read by': readBy }) => ({
      name,
      kind,
      responsivity: responsivity?.entry ?? null,
      at: responsivity?.at ?? null,
      load,
      readBy,
    })),
    references: read.references.map((reference) => ({ ...referenceFrom(reference), name: reference.name })),
    path: read.path === null ? [] : pathFrom(read.path, under(documentSpot, 'path'), report),
  };
}

function mustHaveOneOfEachName(compartments: readonly Compartment[]): void {
  for (const list of partLists) {
    const seen = new Map<string, string>();
    for (const { drawer, file, report } of compartments) {
      drawer[list].forEach(({ name }, index) => {
        const before = seen.get(name);
        if (before !== undefined && name !== '') {
          const what = `${shown(name)} is the name of another of the ${list}, in ${printable(before)}`;
          const place = under(itemSpot(under(documentSpot, list), null, index + 1), 'name');
          report.refuse(place.path, what, `Write ${shown(`${name} 2`)} or another name of its own.`);
        }
        seen.set(name, file);
      });
    }
  }
}

function mustHaveOnePath(compartments: readonly Compartment[]): void {
  const [first, ...others] = compartments.filter(({ hasPath }) => hasPath);
  for (const { report } of others) {
    const what = `a second path, after the one in ${printable(first?.file ?? '')}`;
    report.refuse('path', what, 'Take out one of the two paths.');
  }
}
