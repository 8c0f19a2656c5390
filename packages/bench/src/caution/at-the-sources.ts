/** Light that travels backwards: the reference light at the launch end, and any light that comes back into a source. */
import { type Basis, glassReflection } from '@coreward/optics';
import { intervalOf } from '../quantity/distribution.ts';
import { writeValue } from '../units/write.ts';
import { facetPosition } from './at-the-lens.ts';
import { collimatedEndGeometry, focalLengthsOf } from './end-behind-lens.ts';
import { eyeHazard } from './eye-hazard.ts';
import { bareEndGeometry, endCone } from './fibre-end.ts';
import { atMostText } from './figures-of-caution.ts';
import { type CautionLevel, type Hazard, type HazardPlace, levelFor } from './hazard.ts';
import { backwardLines } from './light-to-count.ts';
import { limitText, wavelengthText } from './limit-texts.ts';
import type { LineOfLight } from './line-of-light.ts';
import { magnified } from './magnified.ts';
import type { Walk } from './walk.ts';

/** Every hazard of light on its way back. */
export function atTheSources(walk: Walk, couplingReached: number | null): readonly Hazard[] {
  const { reference } = walk.launch;
  const line = walk.light.reference;
  const toLaser = walk.answers.yes.has('laser-isolated') ? [] : [reflectedIntoLaser(walk)];
  if (reference === null || line === null) return toLaser;
  return [
    ...backwardLines(walk.light).flatMap((one) => [...backwards(walk, one), openReference(walk, one)]),
    intoLaser(line),
    reachingReference(walk, couplingReached),
    ...(walk.answers.yes.has('reference-isolated') ? [] : [ownReflection(walk, line)]),
    ...toLaser,
  ];
}

/** Of the reference light itself the plain name. */
const forReference = (base: string, { name }: LineOfLight): string =>
  name === 'reference' ? base : `${base}-infrared`;

/** Out of the launch end: through the lens as a beam along the mirrors to the laser, or bare where there is no lens. */
function backwards(walk: Walk, line: LineOfLight): readonly Hazard[] {
  const { launch, views, facts } = walk;
  const { fibre, collimator } = launch;
  // nobody knows how the source fills a fibre of many modes
  const cones = {
    stated: endCone(fibre, line.wavelength, null, 'stated'),
    worse: endCone(fibre, line.wavelength, null, 'worse'),
  };
  const bare = bareEndGeometry('the launch end', cones.stated, cones.worse);
  const common = {
    power: line.power,
    statedPower: line.stated,
    uneven: cones.worse.modes !== 'one',
    assumed: ['all of the reference light is taken to come out of the launch end'],
    basis: [backInjected],
  };
  const focalLengths = views.map(({ focalLength }) => focalLength).filter((one) => one !== null);
  const begin = facetPosition(walk);
  const launchEnd = eyeHazard(
    line,
    {
      ...common,
      id: forReference('launch-end', line),
      point: 'launch end or open joint, reference light',
      place: { part: 'fibre', index: null, from: begin, to: begin },
      geometry: bare,
      doNow: 'Switch the reference source off before you look at or touch the launch end.',
    },
    facts,
  );
  const [stated] = focalLengths;
  if (collimator === null || stated === undefined) return [launchEnd];
  const least = focalLengthsOf(collimator.focalLength);
  return [
    eyeHazard(
      line,
      {
        ...common,
        id: forReference('back-light', line),
        point: 'reference light, backwards',
        place: { part: 'path', index: null, from: 0, to: begin },
        geometry: collimatedEndGeometry('the coupling lens', cones.stated, cones.worse, {
          stated,
          low: (stated * least.low) / least.stated,
          high: Math.max(...focalLengths),
        }),
        doNow: 'Treat the launch side as live whenever the reference source is on, the laser off or not.',
      },
      facts,
    ),
    launchEnd,
  ];
}

/** Unplugged, its own output is open: how it spreads nobody wrote down, so all of it counts. */
function openReference(walk: Walk, line: LineOfLight): Hazard {
  const end = facetPosition(walk) + walk.launch.fibre.length.value;
  return magnified(line, {
    id: forReference('reference-exit', line),
    point: 'reference source, unplugged and on',
    place: { part: 'reference', index: null, from: end, to: end },
    power: line.power,
    statedPower: line.stated,
    doNow: 'Switch the reference source off before you unplug it, and cap its output.',
    assumed: ['how its light spreads is not known: all of it is taken to enter the eye'],
  });
}

const backInjected: Basis = {
  evidence: 'proposal',
  source: 'our proposal: all of the light sent in from the far end comes out of the launch end',
};
const isolation: Basis = {
  evidence: 'proposal',
  source: 'common practice: light back into a source can disturb or damage it; no figure holds for all',
};

interface SourceHazard {
  readonly id: string;
  readonly point: string;
  readonly place: HazardPlace;
  readonly level: CautionLevel;
  readonly power: number;
  /** Whether that is only the average of pulses. */
  readonly average?: boolean;
  readonly limit: number | null;
  readonly wavelength: number;
  readonly what: () => string;
  readonly doNow: string;
  readonly fine: () => string;
  readonly assumed: readonly string[];
  readonly basis: readonly Basis[];
}

/** Words are made when they are asked for. */
const sourceHazard = ({ what, fine, average = false, ...one }: SourceHazard): Hazard => ({
  ...one,
  get what() {
    return what();
  },
  get fine() {
    return fine();
  },
  atRisk: ['source'],
  quantity: `${average ? 'average power' : 'power'} back into the source`,
  value: one.power,
  unit: 'W',
  limitSet: null,
  exposureTime: null,
  hazardDistance: null,
  from: null,
  timesLimit: one.limit === null ? null : one.power / one.limit,
  invisible: false,
  asWritten: null,
  otherTimes: [],
  longer: null,
});

const atLaser: HazardPlace = { part: 'laser', index: null, from: 0, to: 0 };

function intoLaser(line: LineOfLight): Hazard {
  return sourceHazard({
    id: 'back-light-laser',
    point: 'laser, reference light running into it',
    place: atLaser,
    level: 'mind',
    power: line.power,
    limit: null,
    wavelength: line.wavelength,
    what: () =>
      `The laser may get ${atMostText(line.power, 'power')} of reference light; what it bears is not known.`,
    doNow:
      'Keep the laser blocked or off while the reference source is on, until its maker says what it bears.',
    fine: () => `(Estimate: ${wavelengthText(line.wavelength)}, no loss counted.)`,
    assumed: line.assumed,
    basis: [...line.basis, isolation],
  });
}

function reflectedIntoLaser({ light: { laser }, answers }: Walk): Hazard {
  const power = glassReflection.face * laser.power;
  const average = answers.emission?.kind === 'pulsed';
  return sourceHazard({
    id: 'laser-own-reflection',
    point: 'laser, its own light coming back',
    place: atLaser,
    level: 'mind',
    power,
    average,
    limit: null,
    wavelength: laser.wavelength,
    what: () =>
      `The laser may get ${atMostText(power, 'power')}${onAverage(average)} of its own light back, 4 % of a bare face; that can disturb or damage it.`,
    doNow: 'Tilt what reflects, use an angled end or an isolator, and watch for flicker.',
    fine: () => `(Estimate: ${wavelengthText(laser.wavelength)}.)`,
    assumed: laser.assumed,
    basis: [...laser.basis, glassReflection.basis, isolation],
  });
}

function ownReflection(walk: Walk, line: LineOfLight): Hazard {
  const power = glassReflection.face * line.power;
  const end = facetPosition(walk) + walk.launch.fibre.length.value;
  return sourceHazard({
    id: 'reference-own-reflection',
    point: 'reference source, its own light coming back',
    place: { part: 'reference', index: null, from: end, to: end },
    level: 'mind',
    power,
    limit: null,
    wavelength: line.wavelength,
    what: () =>
      `The reference source may get ${atMostText(power, 'power')} of its own light back from a flat end.`,
    doNow: 'Use an angled end or an isolator where its light must be steady.',
    fine: () => `(Estimate: ${wavelengthText(line.wavelength)}, 4 % of one face.)`,
    assumed: line.assumed,
    basis: [...line.basis, glassReflection.basis, isolation],
  });
}

/** Up to which power of the laser the reference source may stay connected. */
export interface StaysConnected {
  /** W of the laser with all of its light coupled, which walking may come to; `null`: not known, so unplug first. */
  readonly whateverIsCoupled: number | null;
  /** W with the coupling reached so far; `null`: that or the tolerance is not known. */
  readonly asCoupledNow: number | null;
}

/**
 * The lower end of what the source bears counts. Infrared of the laser grows with it and other light does not; both get
 * there as well as the laser's own.
 */
export function staysConnected(walk: Walk, couplingReached: number | null): StaysConnected {
  const { light } = walk;
  const bears = borneBy(walk);
  if (bears === null) return { whateverIsCoupled: null, asCoupledNow: null };
  const ofLine = (name: LineOfLight['name']) =>
    light.companions.reduce((sum, line) => (line.name === name ? sum + line.power : sum), 0);
  const grown = 1 + ofLine('infrared') / light.laser.power;
  const laserPower = (share: number) => Math.max(0, bears / share - ofLine('other')) / grown;
  return {
    whateverIsCoupled: laserPower(1),
    asCoupledNow: couplingReached === null || couplingReached === 0 ? null : laserPower(couplingReached),
  };
}

/** W; the lower end counts. Null: not known, as nobody's tolerance for continuous light says what it bears of pulses. */
function borneBy({ launch: { reference }, answers }: Walk): number | null {
  if (reference?.tolerates == null || answers.emission?.kind === 'pulsed') return null;
  return Math.max(0, intervalOf(reference.tolerates, 0.9).low);
}

function reachingReference(walk: Walk, couplingReached: number | null): Hazard {
  const { laser, companions } = walk.light;
  const share = couplingReached ?? 1;
  // what runs along with the laser's light gets there, too
  const forwards = companions.reduce((sum, { power: more }) => sum + more, laser.power);
  const power = forwards * share;
  const connected = staysConnected(walk, couplingReached);
  const bears = borneBy(walk);
  const pulsed = walk.answers.emission?.kind === 'pulsed';
  const end = facetPosition(walk) + walk.launch.fibre.length.value;
  const coupled =
    couplingReached === null
      ? 'with all of it coupled'
      : `with ${writeValue(couplingReached, 'fraction', 2)} of it at the far end`;
  const times = bears === null || bears === 0 ? null : power / bears;
  const reached = `Up to ${atMostText(power, 'power')}${onAverage(pulsed)} of laser light${companions.length === 0 ? '' : ', hidden lines included,'} reaches the reference source`;
  return sourceHazard({
    id: 'reference-receives',
    point: 'reference source at the far end',
    place: { part: 'reference', index: null, from: end, to: end },
    level: receivingLevel(times, bears === null || bears === 0 ? null : forwards / bears),
    power,
    average: pulsed,
    limit: bears,
    wavelength: laser.wavelength,
    what: () =>
      bears === null
        ? `${reached}, ${coupled}, and what it bears${pulsed ? ' of pulses' : ''} is not known.`
        : `${reached}, ${coupled}; it bears ${limitText(Math.max(bears, 1e-12), 'power')}.`,
    doNow: connectedText(connected),
    fine: () => `(Estimate: ${wavelengthText(laser.wavelength)}, no loss in the fibre counted.)`,
    assumed: [
      ...laser.assumed,
      ...(couplingReached === null ? ['all of the light is taken to be coupled'] : []),
    ],
    basis: [...laser.basis, isolation],
  });
}

/** An average says nothing of a single pulse, and must not be read as if it did. */
const onAverage = (average: boolean): string => (average ? ' on average' : '');

/** By what reaches it now; what climbing may bring it to is never less than serious, and what nobody knows never mild. */
function receivingLevel(now: number | null, atMost: number | null): CautionLevel {
  if (now === null || atMost === null) return 'severe';
  const level = levelFor(now);
  return level === 'under the limit' && atMost > 1 ? 'serious' : level;
}

function connectedText({ whateverIsCoupled, asCoupledNow }: StaysConnected): string {
  if (whateverIsCoupled === null || whateverIsCoupled === 0) {
    return 'Unplug it before the laser is switched on.';
  }
  const all = limitText(whateverIsCoupled, 'power');
  const now =
    asCoupledNow === null
      ? ''
      : ` With the coupling you have now that is ${limitText(asCoupledNow, 'power')}, less as you climb.`;
  return `Unplug it, or keep the laser below ${all} while it stays connected.${now}`;
}
