import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { inventedForecast } from '../ledger/invented-forecast.ts';
import { forecastJson } from './forecast-json.ts';

const json = forecastJson(inventedForecast);

/** Every path that ends in a value, a list or null; list items as `[]`, the two kinds of tolerance as `*`. */
function pathsIn(node: unknown, path = ''): readonly string[] {
  if (Array.isArray(node)) {
    const items = node.filter((item) => typeof item === 'object');
    return [path, ...items.flatMap((item) => pathsIn(item, `${path}[]`))];
  }
  if (typeof node !== 'object' || node === null) return [path];
  return Object.entries(node).flatMap(([key, child]) => {
    const step = path === 'tolerances' && !key.startsWith('handLimit') ? '*' : key;
    return pathsIn(child, path === '' ? step : `${path}.${step}`);
  });
}

// docs/forecast-json.md is the promise made to scripts
test('docs/forecast-json.md tells every key, in the order in which they are printed, and no other', () => {
  const page = readFileSync(new URL('../../../../docs/forecast-json.md', import.meta.url), 'utf8');
  const told = [...page.matchAll(/^\| `([^`]+)` \|/gmu)].map(([, key]) => key);
  expect(told).toEqual([...new Set(pathsIn(json))]);
});

// the names and their order as the format was agreed before it was written
test('the agreed keys stand in the agreed order', () => {
  expect(Object.keys(json).slice(0, 10)).toEqual([
    'coreward',
    'name',
    'fibre',
    'facet',
    'coupling',
    'ledger',
    'tolerances',
    'output',
    'nextMeasurement',
    'cautions',
  ]);
  expect(Object.keys(json.coupling).slice(0, 4)).toEqual([
    'guided',
    'fundamental',
    'bestGuided',
    'bestFundamental',
  ]);
  expect(Object.keys(json.ledger[0] ?? {}).slice(0, 5)).toEqual([
    'id',
    'label',
    'transmission',
    'low',
    'high',
  ]);
  expect(Object.keys(json.output)).toEqual(
    expect.arrayContaining([
      'power_W',
      'low_W',
      'high_W',
      'fractionOfLaser',
      'diameter_m',
      'fullDivergence_rad',
    ]),
  );
});

test('numbers arrive as they are, in SI', () => {
  expect(json.output).toMatchObject({
    power_W: 2.1e-3,
    low_W: 1.6e-3,
    high_W: 2.6e-3,
    fractionOfLaser: 0.18,
  });
  expect(json.facet.waistOffsetX_m).toBe(-45e-6);
  expect(json.tolerances.guided.screws).toEqual([{ mirror: 'M1', axis: 'horizontal', turnsFor1dB: 0.05 }]);
});

test('what does not exist is null, and stays so in text', () => {
  const none = forecastJson({
    ...inventedForecast,
    coupling: { ...inventedForecast.coupling, fundamental: null, fundamentalInterval: null },
    tolerances: { ...inventedForecast.tolerances, fundamental: null, handLimit: null },
  });
  const read = JSON.parse(JSON.stringify(none));
  expect(read.coupling).toMatchObject({ fundamental: null, low_fundamental: null, high_fundamental: null });
  expect(read.tolerances.fundamental).toBeNull();
  expect(read.tolerances.handLimit).toBeNull();
});

test('the object survives being written and read as text', () => {
  expect(JSON.parse(JSON.stringify(json))).toEqual(json);
});
