import { nearestWord } from '../document/nearest-word.ts';
import { shown } from '../document/shown.ts';
import { withBareFacet } from '../launch/bare-facet.ts';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import type { Drawer } from './drawer.ts';

/** The parts of a launch by their names in the drawer. */
export interface PartNames {
  readonly laser: string;
  /** `none`: the beam as it is meets the facet. */
  readonly collimator: string;
  readonly fibre: string;
}

/**
 * A launch out of a drawer: these parts, the drawer's path between them, walked by hand, with a bare far end.
 *
 * @throws {Refusal} if the drawer has no part of that name
 */
export function assembleLaunch(drawer: Drawer, names: PartNames): Launch {
  const { lasers, collimators, fibres, path } = drawer;
  const laser = partNamed(lasers, names.laser, 'lasers', drawer.name);
  const fibre = partNamed(fibres, names.fibre, 'fibres', drawer.name);
  const collimator =
    names.collimator === 'none' ? null : partNamed(collimators, names.collimator, 'collimators', drawer.name);
  return withBareFacet({
    name: [laser.name, collimator === null ? 'no collimator' : collimator.name, fibre.name].join(', '),
    laser,
    path,
    collimator,
    fibre,
    reference: null,
    output: null,
    misalignment: null,
  });
}

/** @throws {Refusal} with the name that was probably meant */
export function partNamed<Part extends { readonly name: string }>(
  parts: readonly Part[],
  name: string,
  list: string,
  drawer: string,
): Part {
  const part = parts.find((candidate) => candidate.name === name);
  if (part !== undefined) return part;
  const names = parts.map((candidate) => candidate.name);
  const meant = nearestWord(name, names);
  const mend =
    meant !== null
      ? `Write ${shown(meant)}.`
      : names.length === 0
        ? `Add one to the ${list} of the drawer.`
        : `Choose among ${names.map(shown).join(', ')}.`;
  throw new Refusal({ where: `${drawer} ${list}`, what: `no part is called ${shown(name)}`, mend });
}
