import { expect, test } from 'vitest';
import { readQuantity } from '../units/read-quantity.ts';
import { assign } from './assign.ts';
import { gaugeNamed } from './gauge-table.ts';
import { howTos } from './how-to/how-tos.ts';
import { readTable } from './read-table.ts';
import { drawerEntries } from './to-drawer.ts';

function entriesOf(name: string, text: string) {
  const gauge = gaugeNamed(name)!;
  return drawerEntries(gauge, gauge.measure(assign(gauge, readTable(text, 'readings')).readings));
}

test('what a document is given is read back to the digits shown, interval and all', () => {
  const written = howTos.flatMap(({ gauge, example }) => (example === null ? [] : entriesOf(gauge, example)));
  expect(written.length).toBeGreaterThan(12);
  const dimensions = [
    'length',
    'number',
    'angle',
    'power',
    'fraction',
    'attenuation',
    'loss',
    'screwPitch',
  ] as const;
  for (const { key, quantity, written: text } of written) {
    const shown = /^\{ value: (.*), origin: measured, note: .* \}$/u.exec(text)![1]!;
    const read = dimensions.map((dimension) => readQuantity(shown, dimension)).filter((one) => one.ok);
    // the uncertainty is written to two digits, the value to the same place: half a unit there is 5 % of it
    const same = read.some((one) => Math.abs(one.value - quantity.value) <= 0.06 * quantity.uncertainty);
    expect(same, `${key}: ${shown} for ${quantity.value}`).toBe(true);
    expect(quantity.origin).toBe('measured');
  }
});

test('few readings are entered with the width their interval has', () => {
  const rows = '5.0,0\n5.3,0.06\n5.6,0.49\n5.9,0.93\n6.2,1.0\n6.5,0.99\n';
  const [entry] = entriesOf('knife-edge', `position (mm),power (mW)\n${rows}`);
  const gauge = gaugeNamed('knife-edge')!;
  const { answers } = gauge.measure(
    assign(gauge, readTable(`position (mm),power (mW)\n${rows}`, 'x')).readings,
  );
  const width = answers.find(({ quantity }) => quantity === 'd4sigma_m')!;
  // two degrees of freedom: t is 2.92 where a normal law has 1.645
  expect(entry!.quantity.uncertainty / width.uncertainty!).toBeGreaterThan(1.6);
  expect(entry!.key).toBe('laser.beam.diameter');
});

test('what is undetermined goes nowhere', () => {
  expect(entriesOf('knife-edge', 'position (mm),power (mW)\n1,1\n2,1\n3,1\n4,1\n5,1\n')).toEqual([]);
});
