import {
  type Basis,
  type BeamDefinition,
  hotSpotFactor,
  type IrradianceLimit,
  isUnderLimitEverywhere,
  joinBases,
  limitSetNames,
  nearestEyeDistance,
} from '@coreward/optics';
import { capital } from '../units/capital.ts';
import { writeValue } from '../units/write.ts';
import { atMostText, upToText } from './figures-of-caution.ts';
import {
  type AnotherTime,
  beyondTheBench,
  type CautionLevel,
  type Hazard,
  type HazardPlace,
  levelFor,
  withoutVerdict,
  worseLevel,
} from './hazard.ts';
import { limitText, timeText, wavelengthText } from './limit-texts.ts';
import type { LimitsFor, LineOfLight } from './line-of-light.ts';
import { type Geometry, longestOf, type Reached } from './reach.ts';

/** What is the same for every hazard of one walk. */
export interface WalkFacts {
  /** Longest way to a wall, m; `null`: not known. */
  readonly roomLength: number | null;
}

/** A place where light can meet an eye. */
export interface EyePlace {
  readonly id: string;
  readonly point: string;
  readonly place: HazardPlace;
  readonly geometry: Geometry;
  /** W that are counted here. */
  readonly power: number;
  /** The same for the power as written, W; `null` where none is. */
  readonly statedPower: number | null;
  /** Whether bright grains or an uneven profile may stand out of this light. */
  readonly uneven: boolean;
  readonly doNow: string;
  readonly assumed?: readonly string[];
  readonly basis?: readonly Basis[];
}

/** The hazard of one line of light at one place. Words and what stands beside the distance are made when asked for. */
export function eyeHazard(line: LineOfLight, at: EyePlace, { roomLength }: WalkFacts): Hazard {
  const { eye } = line;
  if (eye === null) return notCovered(line, at);
  const { geometry, power } = at;
  const reached = reachedAt(at, eye);
  const { limit, irradiance } = decidingLimit(at, eye);
  const timesLimit = irradiance / limit.irradiance;
  const { distance } = reached;
  const isAbove = distance > 0 || timesLimit > 1;
  const longer = line.accident === null ? null : judged(at, line.accident);
  return {
    id: at.id,
    point: at.point,
    place: at.place,
    level: worseLevel(
      levelAt(distance, timesLimit),
      longer === null ? 'under the limit' : levelAt(longer.distance, longer.timesLimit),
    ),
    atRisk: [
      'eye',
      ...(Math.max(distance, longer?.distance ?? 0) > beyondTheBench ? (['other people'] as const) : []),
    ],
    get quantity() {
      return `irradiance over ${writeValue(limit.averagingDiameter, 'length')} at the closest eye`;
    },
    value: irradiance,
    unit: 'W/m²',
    limit: limit.irradiance,
    limitSet: limit.set,
    exposureTime: eye.time.exposureTime,
    hazardDistance: distance,
    from: geometry.from,
    timesLimit,
    wavelength: line.wavelength,
    invisible: !line.seen,
    power,
    get asWritten() {
      return at.statedPower === null
        ? null
        : { power: at.statedPower, hazardDistance: writtenReach(at, at.statedPower, eye) };
    },
    get otherTimes() {
      return line.otherTimes.map((limits) => anotherTime(at, limits));
    },
    longer:
      longer === null || line.accident === null
        ? null
        : {
            exposureTime: line.accident.time.exposureTime,
            hazardDistance: longer.distance,
            timesLimit: longer.timesLimit,
            limitSet: longer.limitSet,
          },
    get what() {
      const usual = isAbove
        ? `above the eye limit ${upToText(distance, roomLength, geometry.from)}.`
        : `under the limit assumed for ${timeText(eye.time.exposureTime)}.`;
      const close = isAbove && timesLimit <= 1 && distance <= nearestEyeDistance ? magnifierText : '';
      return `${placeText(line, at.point)}: ${usual}${close}${longerText(line.accident, longer, distance, roomLength)}`;
    },
    doNow: at.doNow,
    get fine() {
      return fineText(at, line, limit);
    },
    assumed: [...line.assumed, ...(at.assumed ?? []), ...(at.uneven && isAbove ? [hotSpotText] : [])],
    get basis() {
      const uneven = at.uneven && isAbove ? [hotSpotFactor.basis] : [];
      return joinBases(limit.basis, reached.basis, line.basis, at.basis ?? [], uneven, [eye.time.basis]);
    },
  };
}

/** Nearer than an unaided eye gets is to be minded: a magnifier gets there. */
function levelAt(distance: number, timesLimit: number): CautionLevel {
  if (timesLimit > 1) return levelFor(timesLimit);
  if (distance === 0) return 'under the limit';
  return distance > nearestEyeDistance ? 'serious' : 'mind';
}

/** What the light comes to for one time. */
function judged(at: EyePlace, limits: LimitsFor) {
  const { limit, irradiance } = decidingLimit(at, limits);
  return {
    timesLimit: irradiance / limit.irradiance,
    distance: reachedAt(at, limits).distance,
    limitSet: limit.set,
  };
}

/** `Laser exit, 808 nm, invisible`. */
export function placeText({ name, wavelength, seen, stated }: LineOfLight, point: string): string {
  const hidden =
    name === 'infrared' || name === 'reference-infrared'
      ? stated === null
        ? ', hidden infrared if there is any'
        : ', hidden infrared'
      : '';
  return `${capital(point)}${hidden}, ${wavelengthText(wavelength)}${seen ? '' : ', invisible'}`;
}

/** The limit that the light comes to more of, of both sets. */
function decidingLimit({ geometry, power }: EyePlace, { all, governing }: LimitsFor) {
  const ofOne = (limit: IrradianceLimit) => ({ limit, irradiance: geometry.closest(power, limit) });
  const times = ({ limit, irradiance }: ReturnType<typeof ofOne>) => irradiance / limit.irradiance;
  return all
    .map(ofOne)
    .reduce((worst, one) => (times(one) > times(worst) * (1 + 1e-9) ? one : worst), ofOne(governing));
}

/** Where 100 s, the usual worst accident, reach farther. */
function longerText(
  accident: LimitsFor | null,
  longer: { readonly distance: number } | null,
  distance: number,
  roomLength: number | null,
): string {
  if (accident === null || longer === null || longer.distance <= distance) return '';
  const { exposureTime } = accident.time;
  return ` For ${timeText(exposureTime)} it is above it ${upToText(longer.distance, roomLength, null)}.`;
}

const magnifierText = ' No unaided eye gets that close; a magnifier does.';
const hotSpotText = 'the light may be uneven or grainy: for the distance twice its power is counted';

/** `(Estimate: 23 mW of 520 nm counted; limit 10 W/m² of icnirp2013 for 10 s, over 7 mm; beam at 1/e.)` */
function fineText(
  { power, geometry }: EyePlace,
  { wavelength }: LineOfLight,
  limit: IrradianceLimit,
): string {
  return (
    `(Estimate: ${atMostText(power, 'power')} of ${wavelengthText(wavelength)} counted; limit ` +
    `${limitText(limit.irradiance, 'irradiance')} of ${limitSetNames[limit.set]} for ${timeText(limit.exposureTime)}, over ` +
    `${writeValue(limit.averagingDiameter, 'length')}; ${definitionText(geometry.beamDefinition)}.)`
  );
}

/** Which width of the beam the distance was computed with. */
export function definitionText(definition: BeamDefinition): string {
  return definition === 'none: a diffuse surface' ? 'a matt surface' : `beam at ${definition}`;
}

/** The farthest of both sets, with what is added for uneven light. */
function reachedAt({ geometry, power, uneven }: EyePlace, { all }: LimitsFor): Reached {
  return longestIn(all, power, (limit) =>
    geometry.atWorst(uneven ? hotSpotFactor.value * power : power, limit),
  );
}

function writtenReach({ geometry }: EyePlace, power: number, { all }: LimitsFor): number {
  return longestIn(all, power, (limit) => geometry.asStated(power, limit)).distance;
}

/** Under the limit everywhere is asked first, of the light as it is: no distance is needed then. */
function longestIn(
  limits: readonly IrradianceLimit[],
  power: number,
  reach: (limit: IrradianceLimit) => Reached,
): Reached {
  const [first, ...others] = limits.map((limit) =>
    isUnderLimitEverywhere({ power, limit }) ? { distance: 0, basis: limit.basis } : reach(limit),
  );
  return longestOf(first!, ...others);
}

function anotherTime(at: EyePlace, limits: LimitsFor): AnotherTime {
  const { exposureTime, wording } = limits.time;
  return { exposureTime, hazardDistance: reachedAt(at, limits).distance, wording };
}

/** Light that no table covers is never under a limit. */
export function notCovered(
  line: LineOfLight,
  at: Pick<EyePlace, 'id' | 'point' | 'place' | 'power' | 'doNow'>,
): Hazard {
  return {
    ...withoutVerdict,
    id: at.id,
    point: at.point,
    place: at.place,
    atRisk: ['eye', 'other people', 'skin'],
    wavelength: line.wavelength,
    invisible: !line.seen,
    power: at.power,
    what: `${placeText(line, at.point)}: not evaluated. ${capital(line.notCovered ?? 'it is outside what this tool covers')}.`,
    doNow: `Treat it like class 4 and ask your laser safety officer first. ${at.doNow}`,
    fine: '',
    assumed: line.assumed,
    basis: line.basis,
  };
}
