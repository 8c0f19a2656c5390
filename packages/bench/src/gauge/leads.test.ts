import { expect, test } from 'vitest';
import { newPart, partKinds } from '../drawer/part.ts';
import { partFields } from '../drawer/part-fields.ts';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { launchFields } from '../launch/launch-fields.ts';
import { placesToFill } from './fill-in.ts';
import { gauges } from './gauge-table.ts';
import { leadsElsewhere } from './leads.ts';
import { keysFilledBy } from './to-drawer.ts';

test.each(gauges.map(({ name }) => name))('%s leads into a part or a launch, or says where else', (name) => {
  expect(keysFilledBy(name).length > 0 || leadsElsewhere(name) !== null).toBe(true);
});

/** Keys that only a list or a group has which the example launch does not use. */
const notInTheExample = new Set([
  'laser.beam.diameter',
  'laser.beam.divergence',
  'laser.beam.waist position',
  'path.lens.transmission',
  'path.lens.focal length',
  'path.filter.transmission',
  'fibre.connectors.between.loss',
  'fibre.core diameter',
]);

test('every key that is filled is a key of a launch or of a part', () => {
  const launch = launchFields(observingLoftLaunch);
  for (const key of new Set(gauges.flatMap(({ name }) => keysFilledBy(name)))) {
    const inLaunch = placesToFill({ key }, launch, null).length;
    const inParts = partKinds.filter(
      (kind) => placesToFill({ key }, partFields(newPart(kind, {})), kind).length > 0,
    );
    expect(inLaunch + inParts.length > 0 || notInTheExample.has(key), key).toBe(true);
  }
});
