import type { Gauge } from './gauge.ts';
import { gaugeNamed } from './gauge-table.ts';

/** A part of the light line, and the gauges that tell something about it. */
export interface GaugeGroup {
  readonly part: 'laser' | 'path' | 'mount' | 'lens' | 'fibre' | 'detector';
  readonly gauges: readonly Gauge[];
}

const names = {
  laser: ['knife-edge', 'spot-picture', 'two-distances', 'caustic'],
  path: ['ruler', 'before-and-after'],
  mount: ['screw-turns'],
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

/** All gauges by the part of the light line they serve, in the order of the light; a test holds them complete. */
export const gaugeGroups: readonly GaugeGroup[] = (Object.keys(names) as GaugeGroup['part'][]).map(
  (part) => ({
    part,
    gauges: names[part].flatMap((name) => gaugeNamed(name) ?? []),
  }),
);
