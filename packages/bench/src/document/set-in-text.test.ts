import { expect, test } from 'vitest';
import { observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import type { FieldPath } from './fields.ts';
import { setInText } from './set-in-text.ts';
import type { Written } from './write-tree.ts';
import { readTree, type Tree } from './yaml-tree.ts';

/** A document as plain values, read by the room's own reader: an editor must agree with who reads. */
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

const at = (tree: unknown, path: FieldPath): unknown =>
  path.reduce<unknown>((node, step) => (node as Record<string | number, unknown>)?.[step], tree);

const edits: readonly { readonly path: FieldPath; readonly value: Written }[] = [
  { path: ['collimator', 'focal length', 'value'], value: '7 mm' },
  { path: ['collimator', 'focal length'], value: '7 mm ± 2 %' },
  {
    path: ['laser', 'beam', 'quality'],
    value: { value: '1.3', origin: 'measured', note: 'caustic, 5 "cuts": # 3' },
  },
  { path: ['path', 1, 'mirror', 'reflectance'], value: '90 %' },
  { path: ['collimator', 'focus'], value: 'best' },
  { path: ['fibre', 'bends', 0, 'turns'], value: '3' },
  { path: ['fibre', 'attenuation'], value: '15 dB/km' },
  { path: ['misalignment', 'x'], value: '-1 µm' },
  { path: ['name'], value: 'null' },
  { path: ['name'], value: '- a: [b] # c' },
  { path: ['fibre', 'connectors', 'between'], value: [{ loss: '0.2 dB' }, { loss: '0.4 dB ± 0.1 dB' }] },
];

for (const { path, value } of edits) {
  test(`${path.join('.')} becomes ${JSON.stringify(value)}, and nothing else changes`, () => {
    const before = values(readTree(observingLoftLaunch, 'before'));
    const text = setInText(observingLoftLaunch, path, value);
    const after = values(readTree(text, 'after'));
    expect(at(after, path)).toEqual(value);
    // back again, all is as it was
    const was = at(before, path);
    expect(values(readTree(setInText(text, path, (was ?? null) as Written | null), 'again'))).toMatchObject(
      before as Record<string, unknown>,
    );
    expect(text.startsWith(observingLoftLaunch.slice(0, 250))).toBe(true);
  });
}

test('a value changes where it stands, letter by letter', () => {
  expect(setInText(observingLoftLaunch, ['collimator', 'focal length', 'value'], '7 mm')).toBe(
    observingLoftLaunch.replace('{ value: 6.2 mm,', '{ value: 7 mm,'),
  );
});

test('a word gives way to a group, and a group to a word', () => {
  const best = setInText(observingLoftLaunch, ['collimator', 'focus'], 'best');
  const again = setInText(best, ['collimator', 'focus', 'set for'], '635 nm');
  expect(readLaunch(again, 'again').collimator?.focus.kind).toBe('wavelength');
});

test('taking a key out leaves its neighbours', () => {
  const text = setInText(observingLoftLaunch, ['reference'], null);
  expect(readLaunch(text, 'without').reference).toBeNull();
  expect(values(readTree(text, 'without'))).toEqual({
    ...(values(readTree(observingLoftLaunch, 'with')) as object),
    reference: undefined,
  });
});

test('what an alias repeats changes in one place only', () => {
  const text = setInText(observingLoftDrawer, ['path', 1, 'mirror', 'reflectance'], '80 %');
  const after = values(readTree(text, 'after'));
  expect(at(after, ['path', 1, 'mirror', 'reflectance'])).toBe('80 %');
  expect(at(after, ['mirrors', 0, 'reflectance'])).toBe('97 %');
});

test('an empty document takes its first key', () => {
  expect(values(readTree(setInText('', ['laser', 'wavelength'], '520 nm'), 'new'))).toEqual({
    laser: { wavelength: '520 nm' },
  });
});
