import type { Launch } from './launch.ts';

/**
 * What the keys of a place stand for, the longest that fits first; a part that its name stands beside needs no more.
 * `#` is a rank in a list.
 */
const owners: readonly (readonly [keys: string, of: string])[] = [
  ['output.collimator', 'of the lens at the far end'],
  ['laser.beam.x', 'of the beam in x'],
  ['laser.beam.y', 'of the beam in y'],
  ['laser.beam', 'of the beam'],
  ['laser', 'of the laser'],
  ['collimator', 'of the lens'],
  ['fibre', 'of the fibre'],
  ['reference', 'of the reference source'],
  ['detector', 'of the detector'],
  ['mirror.mount', 'of the mount'],
  ['mirror', 'of the mirror'],
  ['lens', 'of the lens'],
  ['stop', 'of the stop'],
  ['filter', 'of the filter'],
  ['misalignment', 'at the facet'],
];

/** Keys whose last word alone would not be understood. */
const inside: Readonly<Record<string, string>> = {
  'surfaces.count': 'number of surfaces',
  'surfaces.coating': 'coating',
  'focus.set for': 'focus setting',
  'focus.thread': 'focus thread',
  'ends.in': 'polish where light enters',
  'ends.out': 'polish where light leaves',
  'connectors.in': 'connector where light enters',
  'connectors.out': 'connector where light leaves',
  'connectors.between.#.loss': 'loss of joint #',
  'bends.#.radius': 'radius of bend #',
  'bends.#.turns': 'turns of bend #',
  x: 'horizontal offset',
  y: 'vertical offset',
};

/** The list of a drawer, as a place begins in it, and what lies in it. */
const inDrawer = /^(laser|collimator|fibre|mirror|detector|reference)s\.\d+\./u;

/**
 * A place of a launch or of a drawer as people say it: `collimator.surfaces.coating` is the coating of the lens,
 * `path.2.mirror.reflectance` the reflectance of M1. Of a part in a drawer the part itself is left out, for its name
 * stands beside it. A key that is not known stands as it is written.
 *
 * @param place as refusals and forecasts spell it, ranks in lists from 1
 * @param path the elements of the way, for their names; without them they are told by their rank
 */
export function placeWords(place: string, path: Launch['path'] = []): string {
  const part = inDrawer.exec(place)?.[1] ?? null;
  const onTheWay = /^path\.(\d+)\./u.exec(place);
  const rest = part !== null ? place.replace(inDrawer, `${part}.`) : place.slice(onTheWay?.[0].length ?? 0);
  const [keys, of] = owners.find(([owner]) => rest.startsWith(`${owner}.`)) ?? ['', ''];
  const key = keyWords(keys === '' ? rest : rest.slice(keys.length + 1));
  if (onTheWay !== null) return `${key} ${wayWords(of, Number(onTheWay[1]), path)}`;
  return of === '' || keys === part ? key : `${key} ${of}`;
}

function keyWords(place: string): string {
  const rank = /\d+/u.exec(place)?.[0] ?? '';
  const known = inside[place.replace(/\b\d+\b/u, '#')];
  return known === undefined ? place.replaceAll('.', ' ') : known.replace('#', rank);
}

function wayWords(of: string, rank: number, path: Launch['path']): string {
  const element = path[rank - 1];
  const name = element !== undefined && 'name' in element ? element.name : null;
  if (name === null || of === '') return `${of} at place ${rank} of the way`.trimStart();
  return of === 'of the mount' ? `of the mount of ${name}` : `of ${name}`;
}
