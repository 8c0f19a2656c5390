import { expect, test } from 'vitest';
import { assign } from '../assign.ts';
import { gaugeNamed, gauges } from '../gauge-table.ts';
import { readTable } from '../read-table.ts';
import { sheetOf } from '../sheet.ts';
import { howToFor, howTos, isExample } from './how-tos.ts';

test('every gauge has its how-to, in the order of the table, with steps and cautions', () => {
  expect(howTos.map(({ gauge }) => gauge)).toEqual(gauges.map(({ name }) => name));
  for (const { gauge, steps, cautions } of howTos) {
    expect(steps.length, gauge).toBeGreaterThan(0);
    expect(cautions.length, gauge).toBeGreaterThan(0);
    expect([...steps, ...cautions].join(' '), gauge).not.toMatch(
      /\bsafe|harmless|approved|certified|compliant/iu,
    );
  }
  expect(howToFor('knife-edge')!.gauge).toBe('knife-edge');
  expect(howToFor('knife')).toBeNull();
});

test.each(howTos.filter(({ example }) => example !== null).map((one) => [one.gauge, one.example!] as const))(
  'the example of %s is read, and gives figures',
  (name, example) => {
    const gauge = gaugeNamed(name)!;
    const { readings, unused } = assign(gauge, readTable(example, 'example'));
    expect(unused).toEqual([]);
    const { answers } = gauge.measure(readings);
    for (const answer of answers)
      expect(answer.value, `${answer.quantity}: ${answer.because}`).not.toBeNull();
  },
);

test('the readings of an example are known as ours, whatever is set beside them; other readings are not', () => {
  for (const { gauge: name, example } of howTos) {
    if (example === null) continue;
    const gauge = gaugeNamed(name)!;
    const ours = sheetOf(gauge, example);
    expect(isExample(gauge, ours), name).toBe(true);
    expect(isExample(gauge, { ...ours, text: `${ours.text}\n1,2` }), name).toBe(false);
  }
  const modes = gaugeNamed('mode-count')!;
  expect(
    isExample(modes, { text: '', settings: { 'numerical aperture': '0.14', 'cut-off': '610 nm' } }),
  ).toBe(false);
});
