import { newPart } from '@coreward/bench';
import { expect, test } from 'vitest';
import type { KeptVersion } from '../keeping/versions.ts';
import { gathered, versionLines } from './book-line.ts';
import { whatDiffers } from './what-differs.ts';

const id = '0b5c1a52-5d0e-4f0c-9a59-1f1d2f7e8a10';
const facts = { id, changed: '2026-11-29T09:00:00.000Z', name: 'bench', putAway: false, invented: false };
const launch = (version: number, text: string): KeptVersion => ({ ...facts, version, text });
const fibre = (version: number, name: string, putAway = false): KeptVersion => ({
  ...facts,
  kind: 'fibre',
  version,
  putAway,
  text: newPart('fibre', { name, type: 'OM3' }).text,
});

test('what a version of a part says anew is told without the list it lies in', () => {
  expect(whatDiffers(fibre(1, 'grey'), fibre(2, 'blue'))).toEqual(['name: grey to blue']);
});

test('a launch is told by its whole places', () => {
  const before = launch(1, 'laser:\n  power: 1 mW\n');
  expect(whatDiffers(before, launch(2, 'laser:\n  power: 2 mW\n'))).toEqual([
    'power of the laser: 1\u00a0mW to 2\u00a0mW',
  ]);
});

test('what lies on the way is told by its name', () => {
  const bench = (reflectance: string): string =>
    `coreward: 1\nlaser: {wavelength: 520 nm, power: 1 mW, beam: {diameter: 1 mm}}\npath: [{space: 1 m}, {mirror: {name: loft, reflectance: ${reflectance}}}]\ncollimator: {focal length: 6 mm}\nfibre: {type: OM3}\n`;
  expect(whatDiffers(launch(1, bench('90 %')), launch(2, bench('95 %')))).toEqual([
    'reflectance of loft: 90\u00a0% to 95\u00a0%',
  ]);
});

test('what is put away or brought back, and changed with it, says both', () => {
  expect(whatDiffers(fibre(2, 'grey', true), fibre(3, 'blue'))).toEqual([
    'brought back',
    'name: grey to blue',
  ]);
  expect(whatDiffers(fibre(1, 'grey'), fibre(2, 'grey', true))).toEqual(['put away']);
});

test('the parts that came with the book are one line, one’s own are lines of their own', () => {
  const given = (name: string): KeptVersion => ({ ...fibre(1, name), name, invented: true });
  const own = versionLines([fibre(1, 'mine')]);
  const lines = gathered([...versionLines([given('a')]), ...versionLines([given('b')]), ...own]);
  expect(lines).toEqual([...own, { kind: 'invented', time: facts.changed, parts: [given('a'), given('b')] }]);
});
