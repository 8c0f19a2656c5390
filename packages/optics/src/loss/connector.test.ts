import { expect, test } from 'vitest';
import { lossRow, misses } from '../../reference/loss-rows.ts';
import {
  type ConnectorFamily,
  connectorKind,
  connectorKinds,
  connectorNames,
  isAngled,
  scFerrule,
} from './connector.ts';

const kindOf = (family: ConnectorFamily) => connectorKinds.find((kind) => kind.family === family)!;

const ferrules = lossRow('conn-ferrules');
test(ferrules.title, () => {
  const kinds = (ferrules.inputs.types as unknown as readonly ConnectorFamily[]).map(kindOf);
  expect(
    misses(ferrules, {
      ferruleDiameter_m: kinds.map(({ ferruleDiameter }) => ferruleDiameter.value),
      keyed: kinds.map(({ keyed }) => keyed.value),
      nominalPhysicalContact: kinds.map(({ physicalContact }) => physicalContact.value),
    }),
  ).toEqual([]);
});

const sc = lossRow('conn-sc-ferrule-tolerance');
test(sc.title, () => {
  expect(misses(sc, { ferruleDiameter_m: scFerrule.diameter })).toEqual([]);
  // The nominal figure of the table is this one, rounded to a hundredth of a millimetre.
  expect(Math.abs(kindOf('SC').ferruleDiameter.value - scFerrule.diameter)).toBeLessThan(5e-6);
});

const parts = lossRow('conn-iec-parts');
test(parts.title, () => {
  const kinds = (parts.inputs.types as unknown as readonly ConnectorFamily[]).map(kindOf);
  expect(misses(parts, { iecPart: kinds.map(({ iecPart }) => iecPart.value) })).toEqual([]);
});

test('every connector has a kind but the bare fibre, and three are angled', () => {
  const kindless = connectorNames.filter((name) => connectorKind(name) === null);
  expect(kindless).toEqual(['bare']);
  expect(connectorNames.filter(isAngled)).toEqual(['FC/APC', 'SC/APC', 'LC/APC']);
  for (const name of connectorNames.filter((each) => each !== 'bare')) {
    expect(name.startsWith(connectorKind(name)!.family)).toBe(true);
  }
});
