import { expect, test } from 'vitest';
import { partsIn } from '../drawer/part.ts';
import { partFields } from '../drawer/part-fields.ts';
import { readPart } from '../drawer/part-reading.ts';
import { observingLoftDrawer, observingLoftLaunch } from '../example/example-texts.ts';
import { launchFields } from '../launch/launch-fields.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { filledIn, placesToFill } from './fill-in.ts';
import { gaugeNamed } from './gauge-table.ts';
import { howToFor } from './how-to/how-tos.ts';
import { measured } from './measured.ts';
import type { DrawerEntry } from './to-drawer.ts';

function entriesOf(name: string): readonly DrawerEntry[] {
  const found = measured(
    gaugeNamed(name)!,
    { settings: {}, text: howToFor(name)!.example! },
    null,
    'readings',
  );
  if (found.kind !== 'measured') throw new Error('refused');
  return found.entries;
}
const launch = launchFields(observingLoftLaunch);

test('a laser that is told by its waist takes a diameter only as one at the waist', () => {
  const [diameter, waist] = entriesOf('knife-edge');
  expect(diameter!.key).toBe('laser.beam.diameter');
  expect(placesToFill(diameter!, launch, null)).toEqual([]);
  expect(waist!.condition).toMatch(/at the waist/u);
  const [place] = placesToFill(waist!, launch, null);
  expect(place).toMatchObject({ place: 'laser.beam.waist diameter', before: '0.84 mm ± 0.05 mm' });
  const read = readLaunch(filledIn(observingLoftLaunch, place!, waist!, null), 'launch');
  const { beam } = read.laser;
  // the example scan has its 4σ width written to the micrometre
  expect(JSON.stringify(beam)).toContain('"origin":"measured"');
  expect(filledIn(observingLoftLaunch, place!, waist!, null)).toContain('note: knife edge');
});

test('a reflectance may be that of either mirror, and a focal length says at which colour', () => {
  const [reflectance] = entriesOf('before-and-after');
  expect(placesToFill(reflectance!, launch, null).map(({ place }) => place)).toEqual([
    'path.2.mirror.reflectance',
    'path.4.mirror.reflectance',
  ]);
  const [focal] = entriesOf('far-wall-spot');
  const [place] = placesToFill(focal!, launch, null);
  const written = filledIn(observingLoftLaunch, place!, focal!, null);
  expect(written).toContain('at: 650 nm');
  expect(() => readLaunch(written, 'launch')).not.toThrow();
});

test('a diameter takes its distance along, in the drawer too', () => {
  const laser = partsIn(observingLoftDrawer)
    .filter(({ kind }) => kind === 'laser')
    .map((part) => ({ part, places: placesToFill(entriesOf('knife-edge')[0]!, partFields(part), 'laser') }))
    .find(({ places }) => places.length > 0)!;
  const [place] = laser.places;
  expect(place!.beside!.key).toBe('at');
  const text = filledIn(laser.part.text, place!, entriesOf('knife-edge')[0]!, '480 mm');
  expect(text).toMatch(/at: 480 mm/u);
  expect(readPart({ kind: 'laser', text }).refused).toEqual([]);
});
