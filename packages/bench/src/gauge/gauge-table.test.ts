import { expect, test } from 'vitest';
import { advisedGauges } from '../forecast/next-measurement.ts';
import { gaugeNamed, gauges } from './gauge-table.ts';

test('every gauge that a forecast advises is in the table under that very name', () => {
  expect(advisedGauges.size).toBeGreaterThan(10);
  for (const name of advisedGauges) expect(gaugeNamed(name)?.name, name).toBe(name);
});

test('no two gauges share a name, and none says that anything is without danger', () => {
  const names = gauges.flatMap(({ name, otherNames }) => [name, ...otherNames]);
  expect(new Set(names).size).toBe(names.length);
  for (const gauge of gauges) {
    const said = [gauge.title, gauge.answers, gauge.needs, ...gauge.columns.map(({ what }) => what)].join(
      ' ',
    );
    expect(said).not.toMatch(/\bsafe\b|harmless|certified|compliant/iu);
    expect(gauge.answers.length).toBeGreaterThan(10);
    expect(gauge.needs.length).toBeGreaterThan(10);
  }
});

test('within one gauge no heading could mean two columns', () => {
  for (const { name, columns } of gauges) {
    const headings = columns.flatMap((column) => [column.name, ...(column.otherNames ?? [])]);
    expect(new Set(headings).size, name).toBe(headings.length);
    for (const heading of headings) expect(heading, name).toBe(heading.toLowerCase());
  }
});
