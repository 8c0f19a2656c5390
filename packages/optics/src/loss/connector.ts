import type { Provenance } from './evidence.ts';

/** The connectors a fibre may end in. `SC`, `LC` and `ST` without a suffix are flat; `bare` is a fibre without any. */
export const connectorNames = [
  'FC/PC',
  'FC/APC',
  'SC',
  'SC/APC',
  'LC',
  'LC/APC',
  'ST',
  'SMA',
  'bare',
] as const;
export type ConnectorName = (typeof connectorNames)[number];

/** Families of plugs by the trade's letters, whatever the polish of their ferrule. */
export type ConnectorFamily = 'FC' | 'SC' | 'ST' | 'LC' | 'SMA';

/** One property of a connector family with where it comes from. */
export interface ConnectorFact<T> extends Provenance {
  readonly value: T;
}

/** What is the same for all plugs of a family. */
export interface ConnectorKind {
  readonly family: ConnectorFamily;
  /** Nominal, m. */
  readonly ferruleDiameter: ConnectorFact<number>;
  /** A key stops the ferrule from turning. FC/APC has a wide and a narrow one: parts may differ (from memory). */
  readonly keyed: ConnectorFact<boolean>;
  /** The facets are pressed together; if not, air stands between them. Old FC parts exist without. */
  readonly physicalContact: ConnectorFact<boolean>;
  /** Part of IEC 61754 that fixes its shape. */
  readonly iecPart: ConnectorFact<string>;
}

const trade = (part: string) =>
  ({ source: `IEC 61754 (${part}), as given in trade and tutorial texts`, evidence: 'read' }) as const;
const title = (source: string) => ({ source, evidence: 'read' }) as const;
const remembered = { source: 'trade knowledge', evidence: 'from memory' } as const;

/** The families of plugs, each fact with its source. */
export const connectorKinds: readonly ConnectorKind[] = [
  {
    family: 'FC',
    ferruleDiameter: { value: 2.5e-3, ...trade('FC') },
    keyed: { value: true, ...trade('FC') },
    physicalContact: { value: true, ...trade('FC') },
    iecPart: { value: '61754-13', ...title('IEC 61754-13:2024, title page') },
  },
  {
    family: 'SC',
    ferruleDiameter: { value: 2.5e-3, ...trade('SC') },
    keyed: { value: true, ...remembered },
    physicalContact: { value: true, ...trade('SC') },
    iecPart: { value: '61754-4', ...title('IEC 61754-4:2022, title page') },
  },
  {
    family: 'ST',
    ferruleDiameter: { value: 2.5e-3, ...trade('ST/BFOC') },
    keyed: { value: true, ...trade('ST/BFOC') },
    physicalContact: { value: true, ...trade('ST/BFOC') },
    iecPart: { value: '61754-2', ...title('IEC 61754-2:1996, title page') },
  },
  {
    family: 'LC',
    ferruleDiameter: { value: 1.25e-3, ...trade('LC') },
    keyed: { value: true, ...remembered },
    physicalContact: { value: true, ...trade('LC') },
    iecPart: {
      value: '61754-20',
      source: 'IEC 61754-20, named in a standards commentary',
      evidence: 'secondary',
    },
  },
  {
    family: 'SMA',
    ferruleDiameter: { value: 3.175e-3, ...trade('SMA: 1/8 inch, thread 1/4-36') },
    keyed: { value: false, ...remembered },
    physicalContact: { value: false, ...remembered },
    iecPart: { value: '61754-22', ...remembered },
  },
];

/** How wide the ferrule of a single-mode SC really is, m. */
export const scFerrule = {
  diameter: 2.499e-3,
  tolerance: 0.5e-6,
  source: 'IEC 61754-4, as described in a standards commentary',
  evidence: 'secondary',
} as const satisfies Provenance & { diameter: number; tolerance: number };

/** The kind a connector belongs to, or `null` for a bare fibre. @source `connectorKinds` */
export function connectorKind(name: ConnectorName): ConnectorKind | null {
  const family = familyOf(name);
  return family === null ? null : connectorKinds.find((kind) => kind.family === family)!;
}

/** Whether the facet is polished at 8° to the axis. */
export function isAngled(name: ConnectorName): boolean {
  switch (name) {
    case 'FC/APC':
    case 'SC/APC':
    case 'LC/APC':
      return true;
    case 'FC/PC':
    case 'SC':
    case 'LC':
    case 'ST':
    case 'SMA':
    case 'bare':
      return false;
  }
}

function familyOf(name: ConnectorName): ConnectorFamily | null {
  switch (name) {
    case 'FC/PC':
    case 'FC/APC':
      return 'FC';
    case 'SC':
    case 'SC/APC':
      return 'SC';
    case 'LC':
    case 'LC/APC':
      return 'LC';
    case 'ST':
    case 'SMA':
      return name;
    case 'bare':
      return null;
  }
}
