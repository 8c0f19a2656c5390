import { cardOffset } from '../steer/card-offset/card-offset.ts';
import { caustic } from './caustic/caustic.ts';
import { calorimeter } from './detector/calorimeter.ts';
import { cameraLinearity } from './detector/camera-linearity.ts';
import { photodiode } from './detector/photodiode.ts';
import { solarCell } from './detector/solar-cell.ts';
import { farFieldCone } from './far-field/far-field-cone.ts';
import { farFieldProfile } from './far-field/far-field-profile.ts';
import { corePicture, cutBack, modeCount } from './fibre/fibre-gauges.ts';
import { beforeAndAfter, claddingLight, substitution } from './fibre/ratio-gauges.ts';
import type { Gauge } from './gauge.ts';
import { knifeEdge } from './knife-edge/knife-edge.ts';
import { farWallSpot } from './lens/far-wall-spot.ts';
import { imaging, reverseRadius, threadPitch, twoColourFocus } from './lens/lens-gauges.ts';
import { screwTurns } from './mount/screw-turns.ts';
import { ruler } from './ruler.ts';
import { spotPicture } from './spot-picture/spot-picture.ts';
import { twoDistances } from './two-distances/two-distances.ts';

/** Every gauge there is, in the order of the light: beam, mirror and mount, lens, fibre, detector. */
export const gauges: readonly Gauge[] = [
  knifeEdge,
  spotPicture,
  twoDistances,
  caustic,
  ruler,
  screwTurns,
  cardOffset,
  beforeAndAfter,
  farWallSpot,
  reverseRadius,
  imaging,
  twoColourFocus,
  threadPitch,
  farFieldCone,
  farFieldProfile,
  corePicture,
  modeCount,
  cutBack,
  substitution,
  claddingLight,
  photodiode,
  solarCell,
  calorimeter,
  cameraLinearity,
];

/** A gauge by its name or one of its other names. */
export function gaugeNamed(name: string): Gauge | null {
  return gauges.find((gauge) => gauge.name === name || gauge.otherNames.includes(name)) ?? null;
}
