import { expect, test } from 'vitest';
import { fieldAt } from '../document/fields.ts';
import { setInText } from '../document/set-in-text.ts';
import { readTree, type Tree } from '../document/yaml-tree.ts';
import { observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import {
  drawerOfParts,
  type KeptPart,
  launchFields,
  newPart,
  partFields,
  partKinds,
  placeOfPath,
  readPart,
} from './part.ts';
import { readDrawer } from './read-drawer.ts';

/** The parts of the example drawer, one text each, taken apart by the reader of documents. */
const parts: readonly KeptPart[] = partKinds.flatMap((kind) => {
  const tree = readTree(observingLoftDrawer, 'drawer');
  const list = tree.kind === 'map' ? tree.entries.find(({ key }) => key === `${kind}s`)?.value : undefined;
  return (list?.kind === 'list' ? list.items : []).map((item) =>
    newPart(kind, values(item) as Parameters<typeof newPart>[1]),
  );
});

function values(tree: Tree): unknown {
  switch (tree.kind) {
    case 'text':
      return tree.text;
    case 'nothing':
      return null;
    case 'list':
      return tree.items.map(values);
    case 'map':
      return Object.fromEntries(tree.entries.map(({ key, value }) => [key, values(value)]));
  }
}

test('a drawer taken apart and put together again is the same drawer', () => {
  const whole = readDrawer([{ text: observingLoftDrawer, file: 'whole' }]);
  expect(parts).toHaveLength(21);
  expect(drawerOfParts(parts, whole.path)).toEqual({ ...whole, name: 'drawer' });
});

for (const part of parts) {
  const { name } = readPart(part);
  test(`${name}: every key that is written is found in its fields`, () => {
    const tree = readTree(part.text, 'part');
    const fields = partFields(part);
    const keys = tree.kind === 'map' ? tree.entries.map(({ key }) => key) : [];
    for (const key of keys) {
      const field = fieldAt(fields, [key]);
      if (field === null) throw new Error(`${key} has no field`);
      if (field.kind === 'list') expect(field.items).not.toHaveLength(0);
      else expect(field.written).not.toBeNull();
    }
  });
}

test('a refusal of a part names the place in the part', () => {
  const [laser] = parts;
  if (laser === undefined) throw new Error('no laser');
  const wrong = setInText(laser.text, ['wavelength'], '520');
  expect(readPart({ kind: 'laser', text: wrong }).refused).toMatchObject([
    { place: 'wavelength', what: '`520` has no unit', mend: expect.stringContaining('`520 nm`') },
  ]);
});

test('an empty part asks for what it needs, key by key', () => {
  const { refused } = readPart({ kind: 'laser', text: '{}' });
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

test('the beginning of a list’s new item can be read', () => {
  const bends = fieldAt(launchFields(observingLoftLaunch), ['fibre', 'bends']);
  if (bends?.kind !== 'list') throw new Error('no list of bends');
  const text = setInText(observingLoftLaunch, ['fibre', 'bends', bends.items.length], bends.newItem);
  expect(readLaunch(text, 'launch').fibre.bends).toHaveLength(2);
});
