import { expect, test } from 'vitest';
import { observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import type { Launch } from '../launch/launch.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { writeLaunch } from '../launch/write-launch.ts';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { assembleLaunch } from './assemble-launch.ts';
import { type NamedText, readDrawer } from './read-drawer.ts';

const drawer = readDrawer([{ text: observingLoftDrawer, file: 'drawer.yaml' }]);

function refusedIn(...files: readonly NamedText[]): readonly RefusalParts[] {
  try {
    readDrawer(files);
  } catch (error) {
    if (error instanceof Refusal) return error.parts;
    throw error;
  }
  return [];
}

/** Every entry's key in a launch, with its place in the object. */
function keysIn(value: unknown): string[] {
  if (typeof value !== 'object' || value === null) return [];
  const own = 'key' in value && typeof value.key === 'string' ? [value.key] : [];
  return [...own, ...Object.values(value).flatMap(keysIn)];
}

test('the drawer has what one sees in it', () => {
  const count = (list: readonly unknown[]): number => list.length;
  expect({
    lasers: count(drawer.lasers),
    collimators: count(drawer.collimators),
    fibres: count(drawer.fibres),
    mirrors: count(drawer.mirrors),
    detectors: count(drawer.detectors),
    references: count(drawer.references),
  }).toEqual({ lasers: 3, collimators: 6, fibres: 5, mirrors: 3, detectors: 3, references: 1 });
  expect(drawer.detectors[0]).toMatchObject({ responsivity: { value: 0.26 }, at: { value: 520e-9 } });
});

test('parts in a drawer carry the keys that they have in a launch', () => {
  expect(drawer.lasers[1]?.wavelength.key).toBe('laser.wavelength');
  expect(drawer.collimators[3]?.focalLength.key).toBe('collimator.focal length');
  expect(drawer.fibres[0]?.bends[0]?.radius.key).toBe('fibre.bends.1.radius');
  expect(drawer.path[1]?.kind === 'mirror' && drawer.path[1].reflectance.key).toBe(
    'path.2.mirror.reflectance',
  );
});

for (const laser of drawer.lasers) {
  for (const collimator of [...drawer.collimators.map(({ name }) => name), 'none']) {
    test(`${laser.name} with ${collimator}: the assembled launch is one that a document can say`, () => {
      for (const fibre of drawer.fibres) {
        const launch: Launch = assembleLaunch(drawer, { laser: laser.name, collimator, fibre: fibre.name });
        const again = readLaunch(writeLaunch(launch), 'written.yaml');
        expect(again).toEqual(launch);
        expect(keysIn(again)).toEqual(keysIn(launch));
      }
    });
  }
}

test('a part that is not in the drawer is refused with the one that was probably meant', () => {
  const names = { laser: 'green modul', collimator: 'none', fibre: 'loft line' };
  expect(() => assembleLaunch(drawer, names)).toThrow('Write `green module`.');
  expect(() => assembleLaunch(drawer, { ...names, laser: 'x' })).toThrow(
    'Choose among `green module`, `red alignment laser`, `blue diode`.',
  );
});

test('a refusal names the place in the drawer, not in a launch', () => {
  const text = observingLoftDrawer.replace('wavelength: 450 nm ± 5 nm', 'wavelength: 450');
  expect(refusedIn({ text, file: 'drawer.yaml' })).toMatchObject([
    { where: 'drawer.yaml:18:17 lasers.3.wavelength', what: '`450` has no unit' },
  ]);
});

test('checks beyond the form name their place in the drawer, too', () => {
  const text =
    'coreward: 1\nfibres:\n  - { name: a, type: OM1 }\n  - { name: b, type: OM1, cladding diameter: 9 µm }\n';
  expect(refusedIn({ text, file: 'd.yaml' })).toMatchObject([
    {
      where: 'd.yaml:4:46 fibres.2.cladding diameter',
      what: 'the cladding is narrower than the core of 62.5 µm',
    },
  ]);
});

test('a launch is not a drawer, and that is all that is said', () => {
  expect(refusedIn({ text: observingLoftLaunch, file: 'd.yaml' }).map(({ what }) => what)).toEqual([
    '`laser` makes this a launch, not a drawer',
  ]);
});

test('a part without a name is refused', () => {
  const text = 'coreward: 1\nfibres:\n  - { type: OM1 }\n';
  expect(refusedIn({ text, file: 'd.yaml' })).toMatchObject([{ where: 'd.yaml:3:5 fibres.1.name' }]);
});

const one = {
  file: 'one.yaml',
  text: 'coreward: 1\nname: mine\nfibres: [{ name: a, type: OM1 }]\npath: [{ space: 1 m }]\n',
};

test('several files are one drawer', () => {
  const two = { file: 'two.yaml', text: 'coreward: 1\nfibres: [{ name: b, type: OM2 }]\n' };
  expect(readDrawer([two, one])).toMatchObject({
    name: 'mine',
    fibres: [{ name: 'b' }, { name: 'a' }],
    path: [{ kind: 'space', length: { value: 1 } }],
  });
});

test('a name twice and a second path are refused, even from one file to the next', () => {
  const two = { file: 'two.yaml', text: 'coreward: 1\nfibres: [{ name: a, type: OM2 }]\npath: []\n' };
  const refused = refusedIn(one, two);
  expect(refused.map(({ where }) => where)).toEqual(['two.yaml:2:18 fibres.1.name', 'two.yaml:3:7 path']);
  expect(refused[0]?.what).toContain('one.yaml');
});

test('a name that cannot be printed is refused once, and nothing of it is repeated', () => {
  const text = 'coreward: 1\nfibres:\n  - { name: "\\0", type: OM1 }\n  - { name: "\\0", type: OM1 }\n';
  const refused = refusedIn({ text, file: 'd.yaml' });
  expect(refused.map(({ where }) => where)).toEqual([
    'd.yaml:3:13 fibres.1.name',
    'd.yaml:4:13 fibres.2.name',
  ]);
  for (const { what, mend } of refused) expect(what + mend).not.toMatch(/\p{Cc}/u);
});

test('what is wrong in one file does not hide what is wrong in the next', () => {
  const broken = { file: 'broken.yaml', text: 'coreward: [' };
  const two = { file: 'two.yaml', text: 'coreward: 1\nlazers: []\n' };
  expect(refusedIn(broken, two).map(({ where }) => where.slice(0, 10))).toEqual(['broken.yam', 'two.yaml:2']);
});

test('before a bare facet the last space behind a lens of the path is doubted as a document of the launch doubts it', () => {
  const text = `coreward: 1
lasers: [ { name: red, wavelength: 633 nm, power: 1 mW, beam: { waist diameter: 2 mm } } ]
fibres: [ { name: lead, type: G.652.D } ]
path: [ { space: 100 mm }, { lens: { name: L, focal length: 10 mm } }, { space: 10 mm } ]
`;
  const bare = readDrawer([{ text, file: 'd.yaml' }]);
  const launch = assembleLaunch(bare, { laser: 'red', collimator: 'none', fibre: 'lead' });
  expect(readLaunch(writeLaunch(launch), 'written.yaml')).toEqual(launch);
  const last = launch.path.at(-1)!;
  // z_R = π·(f·λ/(π·w))²/λ is 20 µm here; a usual doubt of a space is many times that
  expect(last.kind === 'space' && last.length.uncertainty).toBeLessThan(20.2e-6);
  expect(launch.path[0]).toEqual(bare.path[0]);
});
