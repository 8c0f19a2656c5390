import { caustic } from './caustic/caustic.ts';
import type { Gauge } from './gauge.ts';
import { knifeEdge } from './knife-edge/knife-edge.ts';

/** Every gauge there is, in the order of the light. */
export const gauges: readonly Gauge[] = [knifeEdge, caustic];

/** A gauge by its name or one of its other names. */
export function gaugeNamed(name: string): Gauge | null {
  return gauges.find((gauge) => gauge.name === name || gauge.otherNames.includes(name)) ?? null;
}
