import { expect, test } from 'vitest';
import { gauges } from './gauge-table.ts';
import { gaugeGroups } from './serves.ts';

test('every gauge serves exactly one part of the light line', () => {
  const served = gaugeGroups.flatMap((group) => group.gauges.map(({ name }) => name));
  expect([...served].sort()).toEqual(gauges.map(({ name }) => name).sort());
});
