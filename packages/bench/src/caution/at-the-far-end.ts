/** Light out of the fibre: the far end bare and behind its lens, joints, a break, bends, and a magnifier before any end. */
import type { Basis } from '@coreward/optics';
import { intervalOf } from '../quantity/distribution.ts';
import { facetPosition } from './at-the-lens.ts';
import { type EyePlace, eyeHazard } from './eye-hazard.ts';
import { bareEndGeometry, type Cones, collimatedEndGeometry } from './fibre-end.ts';
import type { Hazard, HazardPlace } from './hazard.ts';
import type { LineOfLight } from './line-of-light.ts';
import { magnified } from './magnified.ts';
import type { Geometry } from './reach.ts';
import type { Walk } from './walk.ts';

const noLoss: Basis = {
  evidence: 'proposal',
  source: 'our proposal: no loss, and all of the light coupled',
};
const allCoupled = 'all of the light is taken to be in the fibre, with no loss';

/** Every hazard of light that was coupled. */
export function atTheFarEnd(walk: Walk): readonly Hazard[] {
  const { laser, companions } = walk.light;
  const { cones } = walk;
  return [
    ...farEnds(walk, laser, cones.laser),
    ...inTheFibre(walk, laser, cones.laser),
    ...companions.flatMap((line, i) => farEnds(walk, line, cones.companions[i]!)),
  ];
}

function inTheFibre(walk: Walk, line: LineOfLight, cones: Cones): readonly Hazard[] {
  const { fibre } = walk.launch;
  const bare = (from: string) => bareEndGeometry(from, cones.stated, cones.worse);
  const begin = facetPosition(walk);
  const end = begin + fibre.length.value;
  const along = (i: number): HazardPlace => ({
    part: 'fibre',
    index: i,
    // nobody wrote where along the fibre it is
    from: begin,
    to: end,
  });
  const { between } = fibre.connectors;
  return [
    magnified(line, {
      id: 'far-end-magnified',
      point: 'far end, magnified',
      place: { part: 'fibre', index: null, from: end, to: end },
      power: line.power,
      statedPower: line.stated,
      doNow: 'Never inspect an end with a source live. Switch the source off and lock it, then look.',
    }),
    ...between.map((_, i) =>
      eyeHazard(
        line,
        {
          ...fibrePlace(line, cones, along(i), bare('the opened joint')),
          id: `joint-${i + 1}`,
          point: `joint ${i + 1}, opened`,
          doNow: 'Switch the source off before you open it, and put caps on both ends.',
        },
        walk.facts,
      ),
    ),
    ...fibre.bends.map((_, i) =>
      eyeHazard(
        line,
        {
          ...fibrePlace(line, cones, along(i), bare('the bend')),
          id: `bend-${i + 1}`,
          point: `bend ${i + 1}, broken`,
          doNow: 'Cover the bend, and do not look closely at a glow.',
        },
        walk.facts,
      ),
    ),
    ...(walk.answers.yes.has('fibre-whole')
      ? []
      : [
          eyeHazard(
            line,
            {
              ...fibrePlace(
                line,
                cones,
                { part: 'fibre', index: null, from: begin, to: end },
                bare('the break'),
              ),
              id: 'fibre-break',
              point: 'any break in the fibre',
              doNow: 'Check the whole length with dim visible light before you raise the power.',
            },
            walk.facts,
          ),
        ]),
  ];
}

const fibrePlace = (
  { power, stated }: LineOfLight,
  { worse }: Cones,
  place: HazardPlace,
  geometry: Geometry,
): Omit<EyePlace, 'id' | 'point' | 'doNow'> => ({
  place,
  geometry,
  power,
  statedPower: stated,
  // many modes make grains; one mode has none
  uneven: worse.modes !== 'one',
  assumed: [allCoupled],
  basis: [noLoss],
});

/** The far end as it stands, and bare if its lens is taken off. */
function farEnds(walk: Walk, line: LineOfLight, cones: Cones): readonly Hazard[] {
  const { launch, facts } = walk;
  const end = facetPosition(walk) + launch.fibre.length.value;
  const named = line.name === 'laser' ? '' : `-${line.name}`;
  const place: HazardPlace = { part: 'output', index: null, from: end, to: end };
  const common = fibrePlace(line, cones, place, bareEndGeometry('the fibre end', cones.stated, cones.worse));
  const bare = eyeHazard(
    line,
    {
      ...common,
      id: `far-end${named}`,
      point: 'far end, bare',
      doNow: 'Clamp the far end into a beam stop before you switch on. Never look into it.',
    },
    facts,
  );
  const lens = launch.output?.collimator;
  if (lens === undefined) return [bare];
  const focal = lens.focalLength;
  return [
    eyeHazard(
      line,
      {
        ...common,
        id: `far-end-collimated${named}`,
        point: 'far end, behind its lens',
        geometry: collimatedEndGeometry('the lens', cones.stated, cones.worse, {
          stated: focal.value,
          worse: intervalOf(focal, 0.9).high,
        }),
        doNow: 'End the beam in a stop below eye level, and keep people out of it.',
      },
      facts,
    ),
    bare,
  ];
}
