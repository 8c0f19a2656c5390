/** Light that travels backwards: to eyes, and into sources. */
import { type Basis, glassReflection } from '@coreward/optics';
import { writeValue } from '../units/write.ts';
import { facetPosition } from './at-the-lens.ts';
import { backwards, openReference } from './back-light.ts';
import { atMostText } from './figures-of-caution.ts';
import { type CautionLevel, type Hazard, type HazardPlace, levelFor, withoutNumbers } from './hazard.ts';
import { backwardLines } from './light-to-count.ts';
import { limitText, wavelengthText } from './limit-texts.ts';
import type { LineOfLight } from './line-of-light.ts';
import { borneBy, connectedText, staysConnected } from './stays-connected.ts';
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
  ...withoutNumbers,
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
  timesLimit: one.limit === null ? null : one.power / one.limit,
  invisible: false,
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
