import type { PartKind } from '../drawer/part.ts';
import type { Gauge } from './gauge.ts';
import { gaugeNamed, gauges } from './gauge-table.ts';
import { keysFilledBy } from './to-drawer.ts';

/** A part of the light line, and the gauges that tell something about it. */
export interface GaugeGroup {
  readonly part: 'laser' | 'path' | 'mount' | 'lens' | 'fibre' | 'detector';
  readonly gauges: readonly Gauge[];
}

const names = {
  laser: ['knife-edge', 'spot-picture', 'two-distances', 'caustic'],
  path: ['ruler', 'before-and-after'],
  mount: ['screw-turns', 'card-offset'],
  lens: ['far-wall-spot', 'reverse-radius', 'imaging', 'two-colour-focus', 'thread-pitch'],
  fibre: [
    'far-field-cone',
    'far-field-profile',
    'core-picture',
    'mode-count',
    'cut-back',
    'substitution',
    'cladding-light',
  ],
  detector: ['photodiode', 'solar-cell', 'calorimeter', 'camera-linearity'],
} as const satisfies Readonly<Record<GaugeGroup['part'], readonly string[]>>;

/** A part's own group, and what else fills a key of it. */
const ofPart: Readonly<
  Record<PartKind, { readonly group: GaugeGroup['part'] | null; readonly key: string }>
> = {
  laser: { group: 'laser', key: 'laser.' },
  collimator: { group: 'lens', key: 'collimator.' },
  fibre: { group: 'fibre', key: 'fibre.' },
  mirror: { group: 'mount', key: 'path.' },
  detector: { group: 'detector', key: 'detector.' },
  reference: { group: null, key: 'reference.' },
};

/** The gauges that tell something about a kind of part, in the order of the light. */
export function gaugesForPart(kind: PartKind): readonly Gauge[] {
  const { group, key } = ofPart[kind];
  const own: readonly string[] = group === null ? [] : names[group];
  return gauges.filter(
    ({ name }) => own.includes(name) || keysFilledBy(name).some((one) => one.startsWith(key)),
  );
}

/** All gauges by the part of the light line they serve, in the order of the light; a test holds them complete. */
export const gaugeGroups: readonly GaugeGroup[] = (Object.keys(names) as GaugeGroup['part'][]).map(
  (part) => ({
    part,
    gauges: names[part].flatMap((name) => gaugeNamed(name) ?? []),
  }),
);
