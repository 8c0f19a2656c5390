import { expect, test } from 'vitest';
import { type ConnectorName, connectorNames, isAngled } from './connector.ts';
import { mates } from './mating.ts';

test('the order does not matter', () => {
  for (const one of connectorNames) {
    for (const other of connectorNames) expect(mates(one, other)).toEqual(mates(other, one));
  }
});

test('angled never meets flat', () => {
  // Common practice, no source.
  const joined = connectorNames.filter((name) => name !== 'bare');
  for (const one of joined) {
    for (const other of joined) {
      expect(mates(one, other).kind === 'never').toBe(isAngled(one) !== isAngled(other));
    }
  }
});

// Ferrules of 2.5 mm: FC, SC, ST; of 1.25 mm: LC; of 3.175 mm: SMA (trade and tutorial texts, read).
const pairs: readonly { one: ConnectorName; other: ConnectorName; how: ReturnType<typeof mates> }[] = [
  { one: 'FC/PC', other: 'FC/PC', how: sleeve(2.5e-3, { hybrid: false, physicalContact: true }) },
  { one: 'FC/APC', other: 'FC/APC', how: sleeve(2.5e-3, { hybrid: false, physicalContact: true }) },
  { one: 'FC/PC', other: 'SC', how: sleeve(2.5e-3, { hybrid: true, physicalContact: true }) },
  { one: 'FC/APC', other: 'SC/APC', how: sleeve(2.5e-3, { hybrid: true, physicalContact: true }) },
  { one: 'SC', other: 'ST', how: sleeve(2.5e-3, { hybrid: true, physicalContact: true }) },
  { one: 'LC', other: 'LC', how: sleeve(1.25e-3, { hybrid: false, physicalContact: true }) },
  { one: 'SMA', other: 'SMA', how: sleeve(3.175e-3, { hybrid: false, physicalContact: false }) },
  { one: 'LC', other: 'SC', how: { kind: 'adapter', because: 'ferrules differ' } },
  { one: 'SMA', other: 'ST', how: { kind: 'adapter', because: 'ferrules differ' } },
  { one: 'bare', other: 'FC/APC', how: { kind: 'adapter', because: 'bare fibre' } },
  { one: 'LC/APC', other: 'LC', how: { kind: 'never', because: 'angled against flat' } },
];
for (const { one, other, how } of pairs) {
  test(`${one} with ${other}: ${how.kind}`, () => expect(mates(one, other)).toEqual(how));
}

function sleeve(ferruleDiameter: number, rest: { hybrid: boolean; physicalContact: boolean }) {
  return { kind: 'sleeve', ferruleDiameter, ...rest } as const;
}
