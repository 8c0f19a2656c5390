/** Reference light on its way back to eyes: out of the launch end, backwards along the beam, and out of its own source. */
import type { Basis } from '@coreward/optics';
import { facetPosition } from './at-the-lens.ts';
import { collimatedEndGeometry, focalLengthsOf } from './end-behind-lens.ts';
import { eyeHazard } from './eye-hazard.ts';
import { bareEndGeometry, endCone } from './fibre-end.ts';
import type { Hazard } from './hazard.ts';
import type { LineOfLight } from './line-of-light.ts';
import { magnified } from './magnified.ts';
import type { Walk } from './walk.ts';

/** Of the reference light itself the plain name. */
const forReference = (base: string, { name }: LineOfLight): string =>
  name === 'reference' ? base : `${base}-infrared`;

/** Out of the launch end: through the lens as a beam along the mirrors to the laser, or bare where there is no lens. */
export function backwards(walk: Walk, line: LineOfLight): readonly Hazard[] {
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
export function openReference(walk: Walk, line: LineOfLight): Hazard {
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
