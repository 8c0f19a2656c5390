import { expect, test } from 'vitest';
import type { Form } from '../document/form.ts';
import { drawerForm } from '../drawer/drawer-form.ts';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { launchForm } from './launch-form.ts';
import { placeWords } from './place-words.ts';
import { readLaunch } from './read-launch.ts';

// what stands on the right is how people at a bench say it: from memory
test.each([
  ['laser.power', 'power of the laser'],
  ['laser.beam.waist diameter', 'waist diameter of the beam'],
  ['laser.beam.x.quality', 'quality of the beam in x'],
  ['collimator.focal length', 'focal length of the lens'],
  ['collimator.surfaces.coating', 'coating of the lens'],
  ['collimator.focus.set for', 'focus setting of the lens'],
  ['collimator.focus', 'focus of the lens'],
  ['output.collimator.focus.thread', 'focus thread of the lens at the far end'],
  ['fibre.numerical aperture', 'numerical aperture of the fibre'],
  ['fibre.bends.2.radius', 'radius of bend 2 of the fibre'],
  ['fibre.connectors.between.1.loss', 'loss of joint 1 of the fibre'],
  ['path.1.space', 'space at place 1 of the way'],
  ['path.2.mirror.reflectance', 'reflectance of the mirror at place 2 of the way'],
  ['misalignment.x', 'horizontal offset at the facet'],
  ['name', 'name'],
])('%s is told as %s', (place, words) => {
  expect(placeWords(place)).toBe(words);
});

test('what lies on the way is told by its name where that is known', () => {
  const { path } = readLaunch(observingLoftLaunch, 'loft');
  expect(placeWords('path.2.mirror.reflectance', path)).toBe('reflectance of M1');
  expect(placeWords('path.2.mirror.mount.lever', path)).toBe('lever of the mount of M1');
  expect(placeWords('path.1.space', path)).toBe('space at place 1 of the way');
});

test('of a part in the drawer its own kind is left out: its name stands beside it', () => {
  expect(placeWords('lasers.1.power')).toBe('power');
  expect(placeWords('lasers.1.beam.diameter')).toBe('diameter of the beam');
  expect(placeWords('mirrors.1.mount.pitch')).toBe('pitch of the mount');
});

/** Every place where something may be written, the first item of every list. */
function places(form: Form, at: string): readonly string[] {
  const under = (key: string): string => (at === '' ? key : `${at}.${key}`);
  switch (form.kind) {
    case 'map':
      return Object.entries(form.keys).flatMap(([key, { form: inner }]) => places(inner, under(key)));
    case 'list':
      return places(form.item, under('1'));
    case 'either':
      return form.form.kind === 'map' ? [at, ...places(form.form, at)] : [at];
    default:
      return [at];
  }
}

test('no two places of a launch are told alike, and none as it is written in the document', () => {
  const told = places(launchForm, '').map((place) => placeWords(place));
  expect(told.filter((words, i) => told.indexOf(words) !== i)).toEqual([]);
  expect(told.filter((words) => words.includes('.'))).toEqual([]);
  // every key but these belongs to something on the bench
  expect(told.filter((words) => !/ (of|at) /u.test(words))).toEqual(['coreward', 'name', 'collimator']);
});

test('no two places of a part in the drawer are told alike', () => {
  for (const list of ['lasers', 'collimators', 'fibres', 'mirrors', 'detectors', 'references'] as const) {
    const told = places(drawerForm.keys[list].form, list).map((place) => placeWords(place));
    expect(
      told.filter(
        (words, i) => told.indexOf(words) !== i || /[.\d]/u.test(words.replace(/(bend|joint) 1/u, '')),
      ),
    ).toEqual([]);
  }
});
