import { expect, test } from 'vitest';
import { fieldAt } from '../document/fields.ts';
import { placeOfPath } from '../document/places.ts';
import { setInText } from '../document/set-in-text.ts';
import { observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import { launchFields } from '../launch/launch-fields.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { newPart, partsIn, wayIn, writtenPart, writtenWay } from './part.ts';
import { partFields, wayFields } from './part-fields.ts';
import { drawerOfParts, readPart } from './part-reading.ts';
import { readDrawer } from './read-drawer.ts';

const parts = partsIn(observingLoftDrawer);

test('a drawer taken apart and put together again is the same drawer', () => {
  const whole = readDrawer([{ text: observingLoftDrawer, file: 'whole' }]);
  expect(parts).toHaveLength(21);
  expect(drawerOfParts(parts, wayIn(observingLoftDrawer))).toEqual({ ...whole, name: 'drawer' });
});

for (const part of parts) {
  const { name } = readPart(part);
  test(`${name}: every key that is written is found in its fields`, () => {
    const fields = partFields(part);
    const keys = Object.keys(writtenPart(part));
    expect(keys).toContain('name');
    for (const key of keys) {
      const field = fieldAt(fields, [...fields.path, key]);
      if (field === null) throw new Error(`${key} has no field`);
      if (field.kind === 'list') expect(field.items).not.toHaveLength(0);
      else expect(field.written).not.toBeNull();
    }
  });
}

test('a refusal of a part names the place in the part', () => {
  const [laser] = parts;
  if (laser === undefined) throw new Error('no laser');
  const wrong = setInText(laser.text, ['lasers', 0, 'wavelength'], '520');
  expect(readPart({ kind: 'laser', text: wrong }).refused).toMatchObject([
    { place: 'lasers.1.wavelength', what: '`520` has no unit', mend: expect.stringContaining('`520 nm`') },
  ]);
});

test('an empty part asks for what it needs, key by key', () => {
  const { refused } = readPart(newPart('laser', {}));
  expect(refused.map(({ what }) => what).join()).toContain('wavelength');
  expect(refused.every(({ mend }) => mend !== '')).toBe(true);
});

test('the example launch told field by field', () => {
  const fields = launchFields(observingLoftLaunch);
  expect(fieldAt(fields, ['collimator', 'focal length'])).toMatchObject({
    kind: 'quantity',
    written: { text: '6.2 mm', at: '635 nm', origin: 'datasheet', note: null },
    leftOut: { kind: 'required' },
  });
  expect(fieldAt(fields, ['path', 1, 'mirror', 'reflectance'])).toMatchObject({ written: { text: '97 %' } });
  expect(fieldAt(fields, ['laser', 'beam'])).toMatchObject({ kind: 'group', variant: 0, written: 'keys' });
  expect(fieldAt(fields, ['fibre'])).toMatchObject({ variant: 1 });
  expect(placeOfPath(['fibre', 'bends', 0, 'radius'])).toBe('fibre.bends.1.radius');
});

for (const path of [['fibre', 'bends'], ['fibre', 'connectors', 'between'], ['path']]) {
  test(`a new item at the end of ${path.join('.')} can be read as it begins`, () => {
    const list = fieldAt(launchFields(observingLoftLaunch), path);
    if (list?.kind !== 'list') throw new Error('no list');
    const texts = list.newItems.map(({ written }) =>
      setInText(observingLoftLaunch, [...path, list.items.length], written),
    );
    expect(texts.map((text) => readLaunch(text, 'launch').name)).toHaveLength(path.length === 1 ? 5 : 1);
  });
}

test('a fibre out of the drawer stands in a launch as it stood there', () => {
  const fibre = parts.find(({ text }) => text.includes('thick plastic one'));
  if (fibre === undefined) throw new Error('no such fibre');
  const text = setInText(observingLoftLaunch, ['fibre'], writtenPart(fibre));
  const [expected] = drawerOfParts([fibre], null).fibres;
  expect(readLaunch(text, 'launch').fibre).toEqual(expected);
});

test('the way of a launch becomes the way of the drawer', () => {
  const way = wayIn(observingLoftLaunch);
  if (way === null) throw new Error('no way');
  expect(drawerOfParts(parts, way).path).toEqual(readLaunch(observingLoftLaunch, 'launch').path);
  expect(wayFields(way)).toMatchObject({ kind: 'list', items: { length: 5 } });
  expect(wayIn('coreward: 1')).toBeNull();
});

test('the way of a drawer stands in a launch that had none as it stood there', () => {
  const way = wayIn(observingLoftLaunch);
  if (way === null) throw new Error('no way');
  const bare = setInText(observingLoftLaunch, ['path'], null);
  expect(readLaunch(bare, 'launch').path).toEqual([]);
  const text = setInText(bare, ['path'], writtenWay(way));
  expect(readLaunch(text, 'launch').path).toEqual(readLaunch(observingLoftLaunch, 'launch').path);
});
