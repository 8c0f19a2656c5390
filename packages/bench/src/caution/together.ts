/** Several wavelengths in one eye: shares of limits add up, each kind of harm for itself. */
import {
  hotSpotFactor,
  joinBases,
  type Line,
  limitSetNames,
  powerAtLimit,
  stopArea,
  worseCombinedExposure,
} from '@coreward/optics';
import { freeGeometry } from './at-the-laser.ts';
import { facetPosition } from './at-the-lens.ts';
import { collimatedEndGeometry, focalLengthsOf } from './end-behind-lens.ts';
import { definitionText } from './eye-hazard.ts';
import { bareEndGeometry } from './fibre-end.ts';
import { timesText, upToText } from './figures-of-caution.ts';
import { beyondTheBench, type Hazard, type HazardPlace, levelFor } from './hazard.ts';
import { backwardLines } from './light-to-count.ts';
import { timeText, wavelengthText } from './limit-texts.ts';
import type { LimitsFor, LineOfLight } from './line-of-light.ts';
import { type Geometry, worstOf } from './reach.ts';
import type { Walk } from './walk.ts';

/** Where more than one line shines at once: on the launch side, reference light included, and at the far end. */
export function together(walk: Walk): readonly Hazard[] {
  const { laser, companions, reference } = walk.light;
  const forwards = [laser, ...companions];
  const everything = [...forwards, ...backwardLines(walk.light)];
  const begin = facetPosition(walk);
  const end = begin + walk.launch.fibre.length.value;
  return [
    ...sum(walk, everything, {
      id: 'together-launch-side',
      point: 'laser side, all light',
      place: { part: 'path', index: null, from: 0, to: begin },
      geometry: launchSide(walk),
      uneven: walk.uneven,
      doNow:
        reference === null
          ? 'Switch the laser off before you work on the path; what you do not see is live, too.'
          : 'Switch off every source, the reference light too, before you work on the path.',
    }),
    ...sum(walk, forwards, {
      id: 'together-far-end',
      point: 'far end, all light',
      place: { part: 'output', index: null, from: end, to: end },
      ...farGeometry(walk),
      doNow: 'Choose eyewear and stops for every line, not for the one you see.',
    }),
  ];
}

/** The beam from the exit on, as the lenses on the way make it: a telescope carries all the light farther than it left. */
function launchSide({ views }: Walk): Geometry {
  const lenses = views[0].stretches.flatMap(({ part }, i) => (part?.kind === 'lens' ? [i] : []));
  const from = lenses.length === 0 ? 'the exit' : 'the exit or a lens on the way';
  return worstOf(from, [freeGeometry(views, 0, from), ...lenses.map((i) => freeGeometry(views, i, from))]);
}

function farGeometry(walk: Walk): { readonly geometry: Geometry; readonly uneven: boolean } {
  const { stated, worse } = walk.cones.laser;
  const lens = walk.launch.output?.collimator;
  return {
    geometry:
      lens === undefined
        ? bareEndGeometry('the fibre end', stated, worse)
        : collimatedEndGeometry('the lens', stated, worse, focalLengthsOf(lens.focalLength)),
    uneven: worse.modes !== 'one',
  };
}

interface Together {
  readonly id: string;
  readonly point: string;
  readonly place: HazardPlace;
  readonly geometry: Geometry;
  readonly uneven: boolean;
  readonly doNow: string;
}

function sum(walk: Walk, lines: readonly LineOfLight[], at: Together): readonly Hazard[] {
  const covered = lines.filter(isCovered);
  const [first] = covered;
  if (first === undefined || covered.length < 2) return [];
  // one time for all of them, the longest any of them is judged for
  const exposureTime = Math.max(...covered.map(({ eye, accident }) => (accident ?? eye).time.exposureTime));
  const { timesLimit, limitSet, basis } = sumOf(covered, exposureTime);
  const own = first.eye.governing;
  // the distance of one line that is as many times its limit
  const power = timesLimit * powerAtLimit(own);
  const isAbove = timesLimit > 1;
  const reached = isAbove
    ? at.geometry.atWorst(at.uneven ? hotSpotFactor.value * power : power, own)
    : { distance: 0, basis: [] };
  const names = () => covered.map(({ wavelength }) => wavelengthText(wavelength)).join(' and ');
  const notCovered = lines.filter((line) => !isCovered(line));
  return [
    {
      id: at.id,
      point: at.point,
      place: at.place,
      level: levelFor(timesLimit),
      atRisk: ['eye', ...(reached.distance > beyondTheBench ? (['other people'] as const) : [])],
      quantity: 'exposure over limit, summed over all light, all of it in the eye',
      value: timesLimit,
      unit: '1',
      limit: 1,
      limitSet,
      exposureTime,
      hazardDistance: reached.distance,
      from: at.geometry.from,
      timesLimit,
      wavelength: null,
      invisible: covered.some(({ seen }) => !seen),
      power: covered.reduce((all, one) => all + one.power, 0),
      asWritten: null,
      otherTimes: [],
      longer: null,
      get what() {
        return isAbove
          ? `${names()} together: ${timesText(timesLimit)} the eye limit, above it ${upToText(reached.distance, walk.facts.roomLength, at.geometry.from)}.`
          : `${names()} together: under the limit assumed for ${timeText(exposureTime)}.`;
      },
      doNow: at.doNow,
      get fine() {
        return `(Estimate: shares of the limits of ${limitSetNames[limitSet]} for ${timeText(exposureTime)} added, ${definitionText(at.geometry.beamDefinition)}.)`;
      },
      get assumed() {
        return [
          ...covered.flatMap(({ assumed }) => assumed),
          ...notCovered.map(
            ({ title, wavelength }) =>
              `${title}, ${wavelengthText(wavelength)}, is not evaluated and not in the sum`,
          ),
        ];
      },
      get basis() {
        return joinBases(basis, reached.basis, ...covered.map((one) => one.basis));
      },
    },
  ];
}

type CoveredLine = LineOfLight & { readonly eye: LimitsFor };

const isCovered = (line: LineOfLight): line is CoveredLine => line.eye !== null;

function sumOf(lines: readonly CoveredLine[], exposureTime: number) {
  const isTrain = lines.some(({ eye }) => 'pulseDuration' in eye.governing);
  if (isTrain) {
    // limits of trains know no harm to add within: everything is added, which never is the milder
    const worst = lines.map(({ eye, power }) => ({
      times: Math.max(...eye.all.map((limit) => power / powerAtLimit(limit))),
      limit: eye.governing,
    }));
    return {
      timesLimit: worst.reduce((all, { times }) => all + times, 0),
      limitSet: worst[0]!.limit.set,
      basis: joinBases(...worst.map(({ limit }) => limit.basis)),
    };
  }
  const asExposures: readonly Line[] = lines.map(({ eye, power }) => {
    const { governing } = eye;
    return {
      tissue: 'eye',
      wavelength: governing.wavelength,
      exposureTime,
      sourceAngle: null,
      irradiance: power / stopArea(governing.averagingDiameter),
    };
  });
  const { set, largest, basis } = worseCombinedExposure(asExposures);
  return {
    timesLimit: largest.timesLimit,
    limitSet: set,
    basis: joinBases([basis], ...largest.limits.map((limit) => limit.basis)),
  };
}
