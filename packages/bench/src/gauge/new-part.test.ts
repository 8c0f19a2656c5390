import { expect, test } from 'vitest';
import { readPart } from '../drawer/part-reading.ts';
import { readDrawer } from '../drawer/read-drawer.ts';
import { detectorWatts } from '../instrument/detector-watts.ts';
import { gaugeNamed } from './gauge-table.ts';
import { howToFor } from './how-to/how-tos.ts';
import { measured } from './measured.ts';
import { begunPart, partsToBegin } from './new-part.ts';
import type { DrawerEntry } from './to-drawer.ts';

function entriesOf(name: string, text = howToFor(name)!.example!): readonly DrawerEntry[] {
  const found = measured(gaugeNamed(name)!, { settings: {}, text }, null, 'readings');
  if (found.kind !== 'measured') throw new Error(JSON.stringify(found.refused));
  return found.entries;
}

const kindsOf = (name: string, text?: string) =>
  partsToBegin(name, entriesOf(name, text)).map(({ kind }) => kind);

test('a lens, a fibre, a laser or a mirror may be begun from what was measured of it', () => {
  expect(kindsOf('imaging')).toEqual(['collimator']);
  expect(kindsOf('core-picture')).toEqual(['fibre']);
  expect(kindsOf('caustic')).toEqual(['laser']);
  expect(kindsOf('screw-turns')).toEqual(['mirror']);
  expect(kindsOf('photodiode')).toEqual(['laser', 'reference']);
  expect(kindsOf('ruler')).toEqual([]);
});

test('a new collimator is whole with a name and its focal length', () => {
  const [lens] = partsToBegin('far-wall-spot', entriesOf('far-wall-spot'));
  const part = begunPart('far-wall-spot', lens!, 'the one from the far wall');
  expect(readPart(part)).toEqual({ name: 'the one from the far wall', refused: [] });
  expect(part.text).toContain('origin: measured');
  expect(part.text).toContain('at: 650 nm');
});

test('a laser takes waist, place and M² at once, and asks for the rest', () => {
  const [laser] = partsToBegin('caustic', entriesOf('caustic'));
  const part = begunPart('caustic', laser!, 'green one');
  for (const key of ['waist diameter', 'waist position', 'quality']) expect(part.text).toContain(key);
  expect(readPart(part).refused.map(({ place }) => place)).toEqual(['lasers.1.wavelength', 'lasers.1.power']);
});

test('a photodiode under a known power becomes a detector of the drawer; 0.1 V over 250 Ω from 1 mW is 0.4 A/W', () => {
  const text =
    '# load: 250 ohm ± 0.5 ohm\n# known power: 1 mW ± 0.02 mW\n# wavelength: 635 nm\nvoltage (mV)\n100\n100.1\n99.9\n100\n';
  const entries = entriesOf('photodiode', text);
  const [detector] = partsToBegin('photodiode', entries);
  const part = begunPart('photodiode', detector!, 'small diode');
  const [read] = readDrawer([{ text: part.text, file: 'drawer' }]).detectors;
  expect(read).toMatchObject({ name: 'small diode', kind: 'photodiode' });
  const responsivity = read!.responsivity!;
  expect(Math.abs(responsivity.value - 0.4)).toBeLessThan(1e-3);
  // 2 % of power, 0.2 % of load, 0.5 % of the meter and the scatter of 0.08 mV/√4: 2.07 %, written to two digits
  expect(Math.abs(responsivity.uncertainty / 0.4 / 0.0207 - 1)).toBeLessThan(0.06);
  expect(read!.at!.value).toBeCloseTo(635e-9, 15);
});

test('volts of a diode that was judged over its load count the doubt of that load once', () => {
  const text =
    '# load: 250 ohm ± 10 ohm\n# known power: 1 mW ± 0.02 mW\nvoltage (mV)\n100\n100.1\n99.9\n100\n';
  const [detector] = partsToBegin('photodiode', entriesOf('photodiode', text));
  const part = begunPart('photodiode', detector!, 'small diode');
  const [read] = readDrawer([{ text: part.text, file: 'drawer' }]).detectors;
  const watts = detectorWatts(read!, 'V', 0.1, null);
  if (!watts.ok) throw new Error(watts.what);
  expect(watts.power.value).toBeCloseTo(1e-3, 6);
  // 2 % of power, 0.5 % of the meter and 4 % of load, in quadrature; with the load twice it were 6 %
  expect(Math.abs(watts.power.uncertainty / 1e-3 / Math.hypot(0.02, 0.005, 0.04) - 1)).toBeLessThan(0.06);
});

test('a lever goes into a mirror with its pitch, so that their ratio is the tilt that was measured', () => {
  const text = '# distance: 4 m ± 0.01 m\nturns,spot (mm)\n0,100\n1,164\n2,228\n3,292\n';
  const [mirror] = partsToBegin('screw-turns', entriesOf('screw-turns', text));
  const part = begunPart('screw-turns', mirror!, 'M7');
  const [read] = readDrawer([{ text: part.text, file: 'drawer' }]).mirrors;
  // 64 mm a turn at 4 m: 16 mrad of beam, 8 of mirror
  const { lever, pitch } = read!.mount!;
  expect(pitch.value).toBe(0.25e-3);
  expect(pitch.uncertainty).toBe(0);
  // written to a twentieth of its doubt, which is 0.5 % here
  expect(Math.abs(pitch.value / lever.value / 8e-3 - 1)).toBeLessThan(5e-4);
  const known = `# pitch: 0.5 mm\n${text}`;
  const other = begunPart(
    'screw-turns',
    partsToBegin('screw-turns', entriesOf('screw-turns', known))[0]!,
    'M8',
  );
  const [coarse] = readDrawer([{ text: other.text, file: 'drawer' }]).mirrors;
  expect(coarse!.mount!.pitch.value).toBe(0.5e-3);
  expect(coarse!.mount!.lever.value / lever.value).toBeCloseTo(2, 3);
});
