import {
  type IrradianceLimit,
  joinBases,
  limitSetNames,
  magnifierLine,
  powerAtLimit,
} from '@coreward/optics';
import { type EyePlace, notCovered, placeText } from './eye-hazard.ts';
import { atMostText, timesText } from './figures-of-caution.ts';
import { type Hazard, levelFor } from './hazard.ts';
import { limitText, timeText, wavelengthText } from './limit-texts.ts';
import type { LimitsFor, LineOfLight } from './line-of-light.ts';

/** An end that something gathers all the light of: distance plays no part. */
export function magnified(line: LineOfLight, at: Omit<EyePlace, 'geometry' | 'uneven'>): Hazard {
  const { eye } = line;
  if (eye === null) return notCovered(line, at);
  const limit = eye.all.reduce((least, one) => (powerAtLimit(one) < powerAtLimit(least) ? one : least));
  const { timesLimit, basis } = magnifierLine({ power: at.power, limit });
  const longer = Math.max(0, ...(line.accident?.all ?? []).map((one) => at.power / powerAtLimit(one)));
  return {
    id: at.id,
    point: at.point,
    place: at.place,
    level: levelFor(Math.max(timesLimit, longer)),
    atRisk: ['eye'],
    quantity: 'power that a magnifier brings into the eye',
    value: at.power,
    unit: 'W',
    limit: powerAtLimit(limit),
    limitSet: limit.set,
    exposureTime: eye.time.exposureTime,
    hazardDistance: null,
    from: null,
    timesLimit,
    wavelength: line.wavelength,
    invisible: !line.seen,
    power: at.power,
    asWritten: null,
    otherTimes: [],
    longer:
      line.accident === null
        ? null
        : {
            exposureTime: line.accident.time.exposureTime,
            hazardDistance: null,
            timesLimit: longer,
            limitSet: line.accident.governing.set,
          },
    get what() {
      return `${whatText(line, at.point, timesLimit, eye.time.exposureTime)}${longerText(line.accident, longer, timesLimit)}`;
    },
    doNow: at.doNow,
    get fine() {
      return fineText(at.power, line, limit);
    },
    assumed: [...line.assumed, ...(at.assumed ?? [])],
    basis: joinBases(basis, line.basis, at.basis ?? [], [eye.time.basis]),
  };
}

function whatText(line: LineOfLight, point: string, timesLimit: number, exposureTime: number): string {
  const place = placeText(line, point);
  return timesLimit > 1
    ? `${place}: all of it goes into the eye, ${timesText(timesLimit)} the limit, at any distance.`
    : `${place}: under the limit assumed for ${timeText(exposureTime)}.`;
}

function longerText(accident: LimitsFor | null, longer: number, usual: number): string {
  if (accident === null || longer <= 1 || longer <= usual) return '';
  return ` For ${timeText(accident.time.exposureTime)} it is ${timesText(longer)} the limit.`;
}

function fineText(power: number, { wavelength }: LineOfLight, limit: IrradianceLimit): string {
  return (
    `(Estimate: ${atMostText(power, 'power')} of ${wavelengthText(wavelength)} counted; limit ` +
    `${limitText(powerAtLimit(limit), 'power')}, ${limitSetNames[limit.set]}, for ${timeText(limit.exposureTime)}.)`
  );
}
