/** The free beam on the laser's side: its exit, every part on the way, and what leaks and comes back there. */
import { type Basis, glassReflection, leastMirrorPart } from '@coreward/optics';
import type { PathElement } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';
import { idFor, slugged } from './element-id.ts';
import { eyeHazard } from './eye-hazard.ts';
import type { Hazard, HazardPlace } from './hazard.ts';
import type { LineOfLight } from './line-of-light.ts';
import { beamGeometry, type Geometry } from './reach.ts';
import type { Walk } from './walk.ts';

const atExit: HazardPlace = { part: 'laser', index: null, from: 0, to: 0 };

/** The beam where it leaves the laser, one hazard for each line in it. */
export function laserExits({ views, facts, uneven, light }: Walk): readonly Hazard[] {
  const geometry = freeGeometry(views, 0, 'the exit');
  return [light.laser, ...light.companions].map((line) =>
    eyeHazard(
      line,
      {
        id: idFor('laser-exit', line),
        point: 'laser exit',
        place: atExit,
        geometry,
        power: line.power,
        statedPower: line.stated,
        uneven,
        doNow:
          line.name === 'infrared'
            ? 'Have the infrared measured or put a filter against it at the exit, then answer the question about it.'
            : 'Block the beam at the exit before you touch anything. No eye at beam height.',
      },
      facts,
    ),
  );
}

/** The free beam where a stretch begins. Only behind a lens can the narrow view reach farther than the wide one. */
export function freeGeometry([stated, wide, narrow]: Walk['views'], i: number, from: string): Geometry {
  const behindLens = stated.stretches.slice(0, i + 1).some(({ part }) => part?.kind === 'lens');
  return beamGeometry(
    from,
    stated.stretches[i]!.beam,
    wide.stretches[i]!.beam,
    ...(behindLens ? [narrow.stretches[i]!.beam] : []),
  );
}

type Part = Exclude<PathElement, { kind: 'space' }>;

/** The beam behind every part, as though all the light got there. */
export function partsOnTheWay(walk: Walk): readonly Hazard[] {
  const [stated] = walk.views;
  return stated.stretches.flatMap((stretch, i) => {
    const { part, index, position } = stretch;
    if (part === null || index === null) return [];
    const place: HazardPlace = { part: 'path', index, from: position, to: position };
    return hazardsOf(walk, part, place, freeGeometry(walk.views, i, fromWords(part)));
  });
}

const fromWords = (part: Part): string => {
  switch (part.kind) {
    case 'mirror':
      return 'the mirror';
    case 'lens':
      return 'the lens';
    case 'stop':
      return 'the stop';
    case 'filter':
      return 'the filter';
  }
};

function hazardsOf(walk: Walk, part: Part, place: HazardPlace, geometry: Geometry): readonly Hazard[] {
  const { laser, companions } = walk.light;
  const id = slugged(part);
  const whole = beamAt(walk, laser, geometry, place);
  switch (part.kind) {
    case 'mirror':
      return [
        whole(
          id,
          `mirror ${part.name}`,
          1,
          `Block the beam behind ${part.name} before you turn it. Fix the mount; keep the beam level.`,
        ),
        ...leaks(walk, part, place, geometry),
      ];
    case 'lens': {
      const lost = 1 - intervalOf(part.transmission, 0.9).low;
      return [
        ...[laser, ...companions].map((line) =>
          beamAt(walk, line, geometry, place)(
            idFor(id, line),
            `behind lens ${part.name}`,
            1,
            `Put a beam stop behind ${part.name} before you place it.`,
          ),
        ),
        whole(
          `${id}-reflection`,
          `reflection from lens ${part.name}`,
          Math.max(glassReflection.plate, lost),
          'Find the reflection with a card and block it.',
        ),
      ];
    }
    case 'filter':
      return [
        whole(
          `${id}-reflection`,
          `reflection from filter ${part.name}`,
          Math.max(glassReflection.plate, 1 - Math.max(0, intervalOf(part.transmission, 0.9).low)),
          'Tilt the filter and block what it throws back.',
        ),
      ];
    case 'stop':
      return [
        whole(
          `${id}-reflection`,
          `reflection from stop ${part.name}`,
          leastMirrorPart.value,
          'Find the reflection with a card and block it.',
        ),
      ];
  }
}

/** A share of one line, in the beam as it is there. */
function beamAt(walk: Walk, line: LineOfLight, geometry: Geometry, place: HazardPlace) {
  return (id: string, point: string, share: number, doNow: string): Hazard =>
    eyeHazard(
      line,
      {
        id,
        point,
        place,
        geometry,
        power: share * line.power,
        statedPower: line.stated === null ? null : share * line.stated,
        uneven: walk.uneven,
        doNow,
        basis: share === 1 ? [] : [glassReflection.basis],
      },
      walk.facts,
    );
}

/** No mirror keeps everything, and none keeps what it was not coated for. @source common practice, no source */
const leastLeak = 0.01;
const leakBasis: Basis = {
  evidence: 'proposal',
  source:
    'our proposal: what a mirror does not reflect it lets through, 1 % at least, and hidden lines whole',
};

function leaks(
  walk: Walk,
  mirror: Part & { kind: 'mirror' },
  place: HazardPlace,
  geometry: Geometry,
): readonly Hazard[] {
  const kept = Math.min(1, Math.max(0, intervalOf(mirror.reflectance, 0.9).low));
  const lines = [
    { line: walk.light.laser, share: Math.max(leastLeak, 1 - kept) },
    ...walk.light.companions.map((line) => ({ line, share: 1 })),
  ];
  return lines.map(({ line, share }) =>
    eyeHazard(
      line,
      {
        id: idFor(`${slugged(mirror)}-leak`, line),
        point: `leak behind mirror ${mirror.name}`,
        place,
        geometry,
        power: share * line.power,
        statedPower: line.stated === null ? null : share * line.stated,
        uneven: walk.uneven,
        doNow: `Put something opaque right behind ${mirror.name}.`,
        basis: [leakBasis],
      },
      walk.facts,
    ),
  );
}
