import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import type { FieldPath } from '../document/fields.ts';
import { placeOfPath } from '../document/places.ts';
import { observingLoftLaunch } from '../example/example-texts.ts';
import type { Entry } from '../quantity/quantity.ts';
import { editLaunch } from './edit-launch.ts';
import { launchWith, movedByAmount, movedByFactor } from './in-hand.ts';
import { readLaunch } from './read-launch.ts';

const lengths: readonly FieldPath[] = [
  ['laser', 'beam', 'waist diameter', 'value'],
  ['path', 0, 'space'],
  ['path', 4, 'space'],
  ['collimator', 'focal length', 'value'],
  ['fibre', 'cladding diameter'],
];

const comments = (text: string) => text.split('\n').filter((line) => line.trim().startsWith('#'));

/** What the document says: the doubt of a bare value is left aside, for it may follow from its neighbours. */
function entriesOf(
  node: object,
): { readonly key: string; readonly value: number; readonly doubt: number | null }[] {
  return Object.values(node).flatMap((child: unknown) => {
    if (child === null || typeof child !== 'object') return [];
    if (!('defaulted' in child)) return entriesOf(child);
    const { key, value, uncertainty, defaulted } = child as Entry;
    return [{ key, value, doubt: defaulted === 'nothing' ? uncertainty : null }];
  });
}

describe('one place of a launch is changed', () => {
  test('and only that quantity is another; comments and all other lines stay', () => {
    const before = readLaunch(observingLoftLaunch, 'launch');
    fc.assert(
      fc.property(fc.constantFrom(...lengths), fc.integer({ min: 30_000, max: 90_000 }), (path, tenths) => {
        const micrometres = tenths / 10;
        const edited = editLaunch(observingLoftLaunch, path, `${micrometres} µm`);
        if (!edited.ok) throw new Error(edited.refused[0]!.what);
        const key = placeOfPath(path).replace(/\.value$/u, '');
        const others = (launch: object) => entriesOf(launch).filter((entry) => entry.key !== key);
        expect(others(edited.launch)).toEqual(others(before));
        expect(edited.text).toContain(`${micrometres} µm`);
        expect(comments(edited.text)).toEqual(comments(observingLoftLaunch));
        const lines = observingLoftLaunch.split('\n');
        const differing = edited.text.split('\n').filter((line, i) => line !== lines[i]);
        expect(differing).toHaveLength(1);
      }),
      { numRuns: 40 },
    );
  });
  test('what the reader refuses is refused at that place, with the mend', () => {
    const edited = editLaunch(observingLoftLaunch, ['collimator', 'focal length', 'value'], '6.2');
    expect(edited).toMatchObject({ ok: false });
    if (edited.ok) return;
    expect(edited.refused).toHaveLength(1);
    expect(edited.refused[0]!.place).toBe('collimator.focal length.value');
    expect(edited.refused[0]!.mend).toContain('`6.2 mm`');
  });
  test('a change that upsets another place is refused there', () => {
    const edited = editLaunch(observingLoftLaunch, ['laser', 'beam', 'waist diameter'], null);
    expect(edited.ok).toBe(false);
    if (!edited.ok) expect(edited.refused.length).toBeGreaterThan(0);
  });
});

describe('a length in the hand', () => {
  test('keeps its unit and its doubt as they are written', () => {
    expect(movedByFactor('6.2 mm ± 2 %', 'length', 1.1)).toEqual({ text: '6.82 mm ± 2 %', value: 0.00682 });
    expect(movedByFactor('8.2 µm within 5 %', 'length', 2)?.text).toBe('16.4 µm within 5 %');
    expect(movedByAmount('0 mm', 'length', -3)?.text).toBe('-3 mm');
  });
  test('that is no plain number is left alone', () => {
    expect(movedByFactor('1/4 in', 'length', 2)).toBeNull();
    expect(movedByFactor('best', 'length', 2)).toBeNull();
  });
  test('is the only thing that differs in the launch', () => {
    const launch = readLaunch(observingLoftLaunch, 'launch');
    const held = launchWith(launch, 'collimator.focal length', 7e-3);
    expect(held.collimator?.focalLength.value).toBe(7e-3);
    expect(held.fibre).toBe(launch.fibre);
    expect(held.path).toBe(launch.path);
    expect(launchWith(launch, 'no such key', 1)).toBe(launch);
  });
});
