import { caustic } from './caustic/caustic.ts';
import { farFieldCone } from './far-field/far-field-cone.ts';
import { farFieldProfile } from './far-field/far-field-profile.ts';
import type { Gauge } from './gauge.ts';
import { knifeEdge } from './knife-edge/knife-edge.ts';
import { spotPicture } from './spot-picture/spot-picture.ts';
import { twoDistances } from './two-distances/two-distances.ts';

/** Every gauge there is, in the order of the light. */
export const gauges: readonly Gauge[] = [
  knifeEdge,
  spotPicture,
  twoDistances,
  caustic,
  farFieldCone,
  farFieldProfile,
];

/** A gauge by its name or one of its other names. */
export function gaugeNamed(name: string): Gauge | null {
  return gauges.find((gauge) => gauge.name === name || gauge.otherNames.includes(name)) ?? null;
}
