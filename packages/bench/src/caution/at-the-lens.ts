/** Where light meets lens and fibre: the focus without a fibre, reflections, and what the fibre's end scatters. */
import {
  beamRadiusAt,
  diffuseDistance,
  diffuseIrradiance,
  glassReflection,
  leastMirrorPart,
  nearestEyeDistance,
  waistBehindLens,
} from '@coreward/optics';
import { intervalOf } from '../quantity/distribution.ts';
import { idFor } from './element-id.ts';
import { type EyePlace, eyeHazard } from './eye-hazard.ts';
import type { Hazard, HazardPlace } from './hazard.ts';
import type { LineOfLight } from './line-of-light.ts';
import { beamGeometry, type FocusView, focusGeometry, type Geometry } from './reach.ts';
import type { FreeBeam } from './stretches.ts';
import type { Walk } from './walk.ts';

/** Every hazard between the end of the path and the fibre's glass. */
export function atTheLens(walk: Walk): readonly Hazard[] {
  const { collimator } = walk.launch;
  const { laser, companions } = walk.light;
  return [laser, ...companions].flatMap((line) => [
    collimator === null ? pastTheFacet(walk, line) : behindTheFocus(walk, line),
    ...(collimator === null ? [] : [fromTheLens(walk, line, lensShare(walk))]),
    fromTheFacet(walk, line),
    scattered(walk, line),
  ]);
}

const lensPlace = ({ views: [{ pathLength }] }: Walk): HazardPlace => ({
  part: 'collimator',
  index: null,
  from: pathLength,
  to: pathLength,
});

/** Where the fibre begins: the lens to the facet is about its focal length. */
export function facetPosition({ views: [{ pathLength, focalLength }] }: Walk): number {
  return pathLength + (focalLength ?? 0);
}

const facetPlace = (walk: Walk): HazardPlace => ({
  part: 'fibre',
  index: null,
  from: facetPosition(walk),
  to: facetPosition(walk),
});

/** What all of these share. */
const common = (
  { uneven }: Walk,
  { power, stated }: LineOfLight,
  share: number,
): Pick<EyePlace, 'power' | 'statedPower' | 'uneven'> => ({
  power: share * power,
  statedPower: stated === null ? null : share * stated,
  uneven,
});

const focusView = ({ arrival, focalLength }: FreeBeam): FocusView => ({
  focalLength: focalLength ?? 1,
  onLens: { radiusX: beamRadiusAt(arrival.x, 0), radiusY: beamRadiusAt(arrival.y, 0) },
  behind: {
    x: waistBehindLens(arrival.x, focalLength ?? 1),
    y: waistBehindLens(arrival.y, focalLength ?? 1),
  },
});

function behindTheFocus(walk: Walk, line: LineOfLight): Hazard {
  const [stated, ...worse] = walk.views.map(focusView);
  const aperture = walk.launch.collimator?.clearAperture ?? null;
  return eyeHazard(
    line,
    {
      id: idFor('lens-focus', line),
      point: 'behind the lens, no fibre',
      place: lensPlace(walk),
      geometry: focusGeometry([stated!, ...worse], { clearAperture: aperture?.value ?? null }),
      ...common(walk, line, 1),
      doNow: 'Put a beam stop behind the fibre holder before you place the lens.',
    },
    walk.facts,
  );
}

function pastTheFacet(walk: Walk, line: LineOfLight): Hazard {
  return eyeHazard(
    line,
    {
      id: idFor('past-the-facet', line),
      point: 'past the fibre’s end',
      place: facetPlace(walk),
      geometry: arrivingBeam(walk, 'the fibre end'),
      ...common(walk, line, 1),
      doNow: 'Put a beam stop behind the fibre holder.',
    },
    walk.facts,
  );
}

function arrivingBeam({ views }: Walk, from: string): Geometry {
  const [stated, wide, narrow] = views.map(({ arrival }) => arrival);
  return beamGeometry(from, stated!, wide!, narrow!);
}

/** What the lens throws back: by its coating, but never less than one face of glass. */
function lensShare({ launch: { collimator } }: Walk): number {
  if (collimator === null) return 0;
  const { count, reflectance } = collimator.surfaces;
  const each = reflectance === null ? glassReflection.face : intervalOf(reflectance, 0.9).high;
  return Math.min(1, Math.max(glassReflection.face, count * each));
}

function fromTheLens(walk: Walk, line: LineOfLight, share: number): Hazard {
  return eyeHazard(
    line,
    {
      id: idFor('lens-reflection', line),
      point: 'reflection from the lens',
      place: lensPlace(walk),
      geometry: arrivingBeam(walk, 'the lens'),
      ...common(walk, line, share),
      doNow: 'Find the reflection with a card and block it beside the beam.',
      basis: [glassReflection.basis],
    },
    walk.facts,
  );
}

/** A flat end sends it back through the lens as a beam, an angled one aside; both are counted as a beam. */
function fromTheFacet(walk: Walk, line: LineOfLight): Hazard {
  const angled = walk.launch.fibre.ends.in === 'angled 8°';
  return eyeHazard(
    line,
    {
      id: idFor('facet-reflection', line),
      point: 'reflection from the fibre’s end',
      place: facetPlace(walk),
      geometry: arrivingBeam(walk, 'the lens'),
      ...common(walk, line, leastMirrorPart.value),
      doNow: angled
        ? 'Expect it beside the lens, for the end is angled: block it there.'
        : 'Expect it back along the beam, at the mirrors and the laser: block it beside the beam.',
      basis: [leastMirrorPart.basis, glassReflection.basis],
    },
    walk.facts,
  );
}

/** A matt spot seen at the closest and from its distance. */
export function diffuseGeometry(): Geometry {
  const spot = (power: number) => ({ power, reflectance: null, viewingAngle: null });
  return {
    from: 'the spot',
    beamDefinition: 'none: a diffuse surface',
    asStated: (power, limit) => diffuseDistance(spot(power), limit),
    atWorst: (power, limit) => diffuseDistance(spot(power), limit),
    closest: (power) => diffuseIrradiance(spot(power), nearestEyeDistance),
  };
}

/** Whether the glow of all the light is above the limit at the nearest an unaided eye gets. */
function reaches({ eye, power }: LineOfLight): boolean {
  return eye === null || eye.all.some((limit) => diffuseGeometry().closest(power, limit) > limit.irradiance);
}

/** Nothing coupled: all the light on ferrule, cladding or card. */
function scattered(walk: Walk, line: LineOfLight): Hazard {
  return eyeHazard(
    line,
    {
      id: idFor('entry-scatter', line),
      point: 'glow of ferrule or card',
      place: { ...lensPlace(walk), to: facetPosition(walk) },
      geometry: diffuseGeometry(),
      ...common(walk, line, 1),
      uneven: false,
      doNow:
        line.seen && !reaches(line)
          ? 'Look at the spot from the side and from afar, or with a camera; stay at alignment power.'
          : 'Do not look at the spot: use a camera or a detector, and stay at alignment power.',
      assumed: ['all of the light misses the core, and the surface scatters all of it'],
    },
    walk.facts,
  );
}
