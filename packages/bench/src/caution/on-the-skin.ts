/** Hands in the beam: at the exit, and in the focus of the coupling lens. Everything that shines there adds up. */
import { joinBases, limitSetNames, stopArea } from '@coreward/optics';
import { writeValue } from '../units/write.ts';
import { atMostText, timesText } from './figures-of-caution.ts';
import { type Hazard, type HazardPlace, levelFor } from './hazard.ts';
import { limitText, timeText, wavelengthText } from './limit-texts.ts';
import type { LimitsFor, LineOfLight } from './line-of-light.ts';
import type { Walk } from './walk.ts';

/** The skin at the exit and in the focus; none where the tables do not cover the light, for then the eye says so. */
export function onTheSkin(walk: Walk): readonly Hazard[] {
  const { laser, companions } = walk.light;
  if (laser.skin === null) return [];
  const { pathLength } = walk.views[0];
  const exit: HazardPlace = { part: 'laser', index: null, from: 0, to: pathLength };
  const lens: HazardPlace = { part: 'collimator', index: null, from: pathLength, to: pathLength };
  const lines = [laser, ...companions];
  return [
    skinHazard('skin-beam', 'hand in the beam', exit, laser, laser.skin, lines, false),
    ...(walk.launch.collimator === null
      ? []
      : [skinHazard('skin-focus', 'finger or card in the focus', lens, laser, laser.skin, lines, true)]),
  ];
}

function skinHazard(
  id: string,
  point: string,
  place: HazardPlace,
  laser: LineOfLight,
  { governing, time }: LimitsFor,
  lines: readonly LineOfLight[],
  isFocus: boolean,
): Hazard {
  const area = stopArea(governing.averagingDiameter);
  const value = laser.power / area;
  // on the skin everything from 315 nm up adds
  const times = lines.reduce(
    (sum, { power, skin }) =>
      sum +
      (skin === null ? 0 : power / stopArea(skin.governing.averagingDiameter) / skin.governing.irradiance),
    0,
  );
  const stop = writeValue(governing.averagingDiameter, 'length');
  return {
    id,
    point,
    place,
    level: levelFor(times),
    atRisk: ['skin'],
    quantity: `irradiance over ${stop} of skin`,
    value,
    unit: 'W/m²',
    limit: governing.irradiance,
    limitSet: governing.set,
    exposureTime: time.exposureTime,
    hazardDistance: null,
    from: null,
    timesLimit: times,
    wavelength: laser.wavelength,
    invisible: !laser.seen,
    power: laser.power,
    asWritten: null,
    otherTimes: [],
    longer: null,
    get what() {
      return times > 1
        ? `A ${point}, ${wavelengthText(laser.wavelength)}: ${timesText(times)} the limit for skin.`
        : `A ${point}, ${wavelengthText(laser.wavelength)}: under the skin limit assumed for ${timeText(time.exposureTime)}.`;
    },
    doNow: isFocus
      ? 'Keep fingers, card and cloth out of the focus: a pinpoint burn, or fire, is possible below the limit, too.'
      : 'Keep hands out of the beam; block it before you reach across.',
    get fine() {
      return (
        `(Estimate: ${atMostText(laser.power, 'power')} of ${wavelengthText(laser.wavelength)} counted; limit ` +
        `${limitText(governing.irradiance, 'irradiance')} of ${limitSetNames[governing.set]} for ${timeText(time.exposureTime)}, over ${stop}${lines.length > 1 ? '; the lines beside it added' : ''}.)`
      );
    },
    assumed: laser.assumed,
    basis: joinBases(governing.basis, laser.basis, [time.basis]),
  };
}
