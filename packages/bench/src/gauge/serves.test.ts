import { expect, test } from 'vitest';
import { gauges } from './gauge-table.ts';
import { gaugeGroups, gaugesForPart } from './serves.ts';

test('every gauge serves exactly one part of the light line', () => {
  const served = gaugeGroups.flatMap((group) => group.gauges.map(({ name }) => name));
  expect([...served].sort()).toEqual(gauges.map(({ name }) => name).sort());
});

test('a part is led to the gauges of its group, and to those that fill one of its keys', () => {
  const named = (kind: Parameters<typeof gaugesForPart>[0]) => gaugesForPart(kind).map(({ name }) => name);
  expect(named('laser')).toEqual(
    expect.arrayContaining(['knife-edge', 'caustic', 'photodiode', 'calorimeter']),
  );
  expect(named('laser')).not.toContain('cut-back');
  expect(named('mirror')).toEqual(expect.arrayContaining(['screw-turns', 'before-and-after']));
  expect(named('fibre')).toEqual(expect.arrayContaining(['ruler', 'cut-back', 'far-field-cone']));
  expect(named('reference')).toContain('photodiode');
});
