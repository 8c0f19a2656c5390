import { readFileSync } from 'node:fs';
import { limitSetNames } from '@coreward/optics';
import { expect, test } from 'vitest';
import { cautionsFor } from '../caution/cautions.ts';
import { hazardEvidence, hazardTerms } from '../caution/hazard-terms.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { hazardPlaces } from './hazard-places.ts';
import { lineParts } from './line-parts.ts';

const loft = readLaunch(
  readFileSync(new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url), 'utf8'),
  'loft',
);
const { hazards } = cautionsFor(loft);
const places = hazardPlaces(lineParts(loft, [], 0.006), hazards);
const idsAt = (part: string) =>
  places.find((place) => place.part === part)?.hazards.map(({ id }) => id) ?? [];

test('every hazard stands at one place of the line, and each place tells its worst', () => {
  expect(places.flatMap(({ hazards: here }) => here.map(({ id }) => id)).toSorted()).toEqual(
    hazards.map(({ id }) => id).toSorted(),
  );
  for (const { level, hazards: here } of places) expect(here[0]?.level).toBe(level);
});

test('a leak is at its mirror, a break in the fibre, an end under a magnifier at the far end', () => {
  expect(idsAt('laser')).toContain('laser-exit');
  expect(idsAt('path-2')).toContain('mirror-M1-leak');
  expect(idsAt('collimator')).toContain('lens-focus');
  expect(idsAt('facet')).toContain('facet-reflection');
  expect(idsAt('fibre')).toContain('fibre-break');
  expect(idsAt('far-end')).toContain('far-end-magnified');
  expect(idsAt('far-end')).toContain('reference-receives');
  expect(idsAt('bench')).toContain('glass-pieces');
});

test('what hurts without a lens stands at the facet', () => {
  const bare = readLaunch(
    'coreward: 1\nlaser: { wavelength: 650 nm, power: 4 mW, beam: { diameter: 1.1 mm, at: 300 mm } }\ncollimator: none\nfibre: { type: OM2 }',
    'bare',
  );
  const at = hazardPlaces(lineParts(bare, [], 0), cautionsFor(bare).hazards);
  expect(at.map(({ part }) => part)).not.toContain('collimator');
});

test('the terms of a hazard name set, time and distance, and invisible light as such', () => {
  for (const hazard of hazards) {
    const said = hazardTerms(hazard, null)
      .map(({ term, text }) => `${term} ${text}`)
      .join('\n');
    if (hazard.limitSet !== null) expect(said).toContain(`limit set ${limitSetNames[hazard.limitSet]}`);
    if (hazard.exposureTime !== null) expect(said).toMatch(/time \d+ s/u);
    expect(said.includes('invisible light')).toBe(hazard.invisible);
    expect(`${said}${JSON.stringify(hazardEvidence(hazard, null))}`).not.toMatch(/NaN|undefined|Infinity/u);
    if (hazard.basis.length > 0) expect(JSON.stringify(hazardEvidence(hazard, null))).toMatch(/\[[RMGP]\]/u);
  }
});
