import { type ConnectorName, connectorKind, isAngled } from './connector.ts';

/** How one connector meets another. */
export type Mating =
  /** In a sleeve of their common ferrule diameter (m). `hybrid`: the housings differ, so the sleeve needs one of each. */
  | {
      readonly kind: 'sleeve';
      readonly ferruleDiameter: number;
      readonly hybrid: boolean;
      /** Facet against facet; if not, air stands between them (air-gap.ts). */
      readonly physicalContact: boolean;
    }
  /** Only with a part in between that brings both ferrules, or a bare fibre, to one axis. */
  | { readonly kind: 'adapter'; readonly because: 'ferrules differ' | 'bare fibre' }
  /** Pressed together they would touch at one edge, chip, and leave a wedge of air. */
  | { readonly kind: 'never'; readonly because: 'angled against flat' };

/**
 * Whether two connectors go together, and what it takes. The order does not matter.
 *
 * A bare fibre needs a temporary ferrule or a splice, whatever its end; angled against flat is refused before anything
 * else.
 *
 * @source ferrule diameters and contact from `connectorKinds`; that angled never mates flat: common practice, no source
 */
export function mates(one: ConnectorName, other: ConnectorName): Mating {
  const first = connectorKind(one);
  const second = connectorKind(other);
  if (first === null || second === null) return { kind: 'adapter', because: 'bare fibre' };
  if (isAngled(one) !== isAngled(other)) return { kind: 'never', because: 'angled against flat' };
  // Nominal diameters of one table: equal or clearly different.
  if (first.ferruleDiameter.value !== second.ferruleDiameter.value) {
    return { kind: 'adapter', because: 'ferrules differ' };
  }
  return {
    kind: 'sleeve',
    ferruleDiameter: first.ferruleDiameter.value,
    hybrid: first.family !== second.family,
    physicalContact: first.physicalContact.value && second.physicalContact.value,
  };
}
