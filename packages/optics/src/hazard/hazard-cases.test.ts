import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { departures, hazardCase, hazardCases } from '../../reference/hazard-cases.ts';

const own = 'hazard-cases.test.ts';
const texts = readdirSync(import.meta.dirname)
  .filter((name) => name.endsWith('.test.ts') && name !== own)
  .map((name) => readFileSync(`${import.meta.dirname}/${name}`, 'utf8'));

/** Topics whose every case is asked for by a loop over the topic. */
const wholeTopics = ['factors', 'mpe-eye', 'mpe-skin', 'ael'];

test('every case is asked for by a test of this folder', () => {
  // 119 of the limits and 7 of facets
  expect(hazardCases).toHaveLength(126);
  const missing = hazardCases.filter(
    ({ id, topic }) => !wholeTopics.includes(topic) && !texts.some((text) => text.includes(`'${id}'`)),
  );
  expect(missing.map(({ id }) => id)).toEqual([]);
  for (const topic of wholeTopics) {
    expect(texts.some((text) => text.includes(`topic === '${topic}'`))).toBe(true);
  }
});

test('no two cases share a name', () => {
  expect(new Set(hazardCases.map(({ id }) => id)).size).toBe(hazardCases.length);
});

test('a wrong, a missing and a needless answer are all noticed', () => {
  const one = hazardCase('SAF-EYE-633-250MS-EU');
  expect(departures(one, { H_J_m2: 6.36396103068 })).toEqual([]);
  expect(departures(one, { H_J_m2: 6.36396103068 * 1.0011 })).toHaveLength(1);
  expect(departures(one, {})).toHaveLength(1);
  expect(departures(one, { H_J_m2: 6.36396103068, more: 1 })).toHaveLength(1);
  expect(departures(hazardCase('SAF-CLASS-650-4MW'), { class: '3B' })).toHaveLength(1);
  expect(departures(hazardCase('SAF-NOHD-CLASS2-ZERO'), { nohd_m: 1e-6 })).toHaveLength(1);
});
