/** Light out of the fibre: the far end bare and behind its lens, joints, a break, bends, and a magnifier before any end. */
import type { Basis } from '@coreward/optics';
import { facetPosition } from './at-the-lens.ts';
import { idFor } from './element-id.ts';
import { collimatedEndGeometry, focalLengthsOf } from './end-behind-lens.ts';
import { type EyePlace, eyeHazard } from './eye-hazard.ts';
import { bareEndGeometry, type Cones } from './fibre-end.ts';
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
    ...anywhere(walk, laser, cones.laser),
    ...jointsAndBends(walk, laser, cones.laser),
    ...companions.flatMap((line, i) => [
      ...farEnds(walk, line, cones.companions[i]!),
      ...anywhere(walk, line, cones.companions[i]!),
    ]),
  ];
}

/** From where to where the fibre lies, m along the light. */
const fibreSpan = (walk: Walk): Pick<HazardPlace, 'from' | 'to'> => {
  const begin = facetPosition(walk);
  return { from: begin, to: begin + walk.launch.fibre.length.value };
};

/** Under a magnifier, and at a break that may be anywhere. */
function anywhere(walk: Walk, line: LineOfLight, cones: Cones): readonly Hazard[] {
  const { from: begin, to: end } = fibreSpan(walk);
  const broken = (): Hazard =>
    eyeHazard(
      line,
      {
        ...fibrePlace(
          line,
          cones,
          { part: 'fibre', index: null, from: begin, to: end },
          bareEndGeometry('the break', cones.stated, cones.worse),
        ),
        id: idFor('fibre-break', line),
        point: 'any break in the fibre',
        doNow: 'Check the whole length with dim visible light before you raise the power.',
      },
      walk.facts,
    );
  return [
    magnified(line, {
      id: idFor('far-end-magnified', line),
      point: 'far end, magnified',
      place: { part: 'fibre', index: null, from: end, to: end },
      power: line.power,
      statedPower: line.stated,
      doNow: 'Never inspect an end with a source live. Switch the source off and lock it, then look.',
    }),
    ...(walk.answers.yes.has('fibre-whole') ? [] : [broken()]),
  ];
}

/** Every joint as though it were opened, every bend as though it broke. */
function jointsAndBends(walk: Walk, line: LineOfLight, cones: Cones): readonly Hazard[] {
  const { connectors, bends } = walk.launch.fibre;
  const at = (i: number, from: string) =>
    fibrePlace(
      line,
      cones,
      // nobody wrote where along the fibre it is
      { part: 'fibre', index: i, ...fibreSpan(walk) },
      bareEndGeometry(from, cones.stated, cones.worse),
    );
  return [
    ...connectors.between.map((_, i) =>
      eyeHazard(
        line,
        {
          ...at(i, 'the opened joint'),
          id: `joint-${i + 1}`,
          point: `joint ${i + 1}, opened`,
          doNow: 'Switch the source off before you open it, and put caps on both ends.',
        },
        walk.facts,
      ),
    ),
    ...bends.map((_, i) =>
      eyeHazard(
        line,
        {
          ...at(i, 'the bend'),
          id: `bend-${i + 1}`,
          point: `bend ${i + 1}, broken`,
          doNow: 'Cover the bend, and do not look closely at a glow.',
        },
        walk.facts,
      ),
    ),
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
  const place: HazardPlace = { part: 'output', index: null, from: end, to: end };
  const common = fibrePlace(line, cones, place, bareEndGeometry('the fibre end', cones.stated, cones.worse));
  const bare = eyeHazard(
    line,
    {
      ...common,
      id: idFor('far-end', line),
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
        id: idFor('far-end-collimated', line),
        point: 'far end, behind its lens',
        geometry: collimatedEndGeometry('the lens', cones.stated, cones.worse, focalLengthsOf(focal)),
        doNow: 'End the beam in a stop below eye level, and keep people out of it.',
      },
      facts,
    ),
    bare,
  ];
}
