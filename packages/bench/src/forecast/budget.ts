import {
  type FacetBeam,
  fibreTransmission,
  powerThroughAperture,
  transmissionFromNepers,
} from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import type { Draw } from './draw.ts';
import type { LedgerGroup } from './expected.ts';
import type { Taker } from './fibre-taker.ts';
import { beamAt, type Meeting } from './meeting.ts';
import { type Asking, type ChainOfCauses, chainOfCauses, overlapCauses } from './overlap-causes.ts';
import type { BestDistances } from './stated-focus.ts';
import {
  attenuationOf,
  bendLoss,
  claddingSurvival,
  endTransmission,
  type InTheBends,
  lostInTheLay,
} from './through-the-fibre.ts';
import { focalLengthFor, surfacesTransmission } from './way-to-the-facet.ts';

/** One loss in one draw. */
export interface Loss {
  readonly id: string;
  readonly group: LedgerGroup;
  readonly label: string;
  readonly transmission: number;
}

/** Where the light goes in one draw, decibel by decibel. The same launch gives the same losses in the same order. */
export interface Budget {
  readonly losses: readonly Loss[];
  readonly chain: ChainOfCauses;
  /** Distance of the facet from the lens, m, and the one for most light. */
  readonly distance: number;
  readonly bestDistance: number;
  /** Fractions of the laser's power. */
  readonly output: number;
  readonly beforeFacet: number;
  readonly reflected: number;
  readonly cladding: number;
  readonly beyondCladding: number;
  /** Cladding light that leaves the far end, a fraction of the laser's power. */
  readonly claddingAtFarEnd: number;
  /** Modes lost in bends. */
  readonly lostModes: number;
  /** Power in each mode of the taker's set behind the last bend, attenuation left out; null where modes are not followed. */
  readonly powersOut: Float64Array | null;
  readonly attenuation: number;
}

/** The id of what a fibre's lay takes. */
export const looseModes = 'loose-modes';

/** Whether a loss has its entry in a ledger: all have, but what the lay takes where it takes nothing. */
export const hasEntry = ({ id, transmission }: Pick<Loss, 'id' | 'transmission'>): boolean =>
  id !== looseModes || transmission < 1;

/** @param best distances of the facet behind the lens for the most light in this draw: with the lens as it is, and were it perfect */
export function budgetOf(
  launch: Launch,
  draw: Draw,
  meeting: Meeting,
  taker: Taker,
  best: BestDistances,
  asking: Asking,
): Budget {
  const { wavelength, index } = meeting;
  const { collimator, fibre, output } = launch;
  const distance = (meeting.setDistance ?? best.distance) + meeting.defocus;
  const { unaberrated: bestUnaberrated, roundBeside } = best;
  const places = { bestUnaberrated, roundBeside, best: best.distance, actual: distance };
  const chain = chainOfCauses(meeting, taker, places, meeting.aim, asking);

  const path: Loss[] = meeting.arrival.parts.map(({ id, label, transmission }) => ({
    id,
    group: 'path',
    label,
    transmission,
  }));
  const lens: Loss[] = [];
  if (collimator !== null) {
    if (collimator.clearAperture !== null) {
      lens.push({ id: 'lens-clip', group: 'lens', label: 'clipped at the lens', transmission: chain.stop });
    }
    lens.push({
      id: 'lens-surfaces',
      group: 'lens',
      label: 'lens surfaces',
      transmission: surfacesTransmission(collimator, wavelength, draw),
    });
  }
  const entryThrough = endTransmission(fibre.ends.in, index);
  const entry: Loss = { id: 'entry-facet', group: 'facet', label: 'entry facet', transmission: entryThrough };
  const overlap: Loss[] = overlapCauses.map(({ id, label }, i) => ({
    id,
    group: 'overlap',
    label,
    transmission: chain.factors[i]!,
  }));

  const attenuation = attenuationOf(launch, wavelength, draw);
  const inFibre: Loss[] = [
    {
      id: 'attenuation',
      group: 'fibre',
      label: 'attenuation',
      transmission: fibreTransmission(attenuation, Math.max(0, draw.at(fibre.length))),
    },
  ];
  const lay = lostInTheLay(launch, meeting, taker, chain.powers, draw);
  // where V is uncertain the modes that the lay takes first are not among those that it is asked about
  const held = asking.setRight === null ? lay.transmission : lay.transmission * chain.followed;
  inFibre.push({ id: looseModes, group: 'fibre', label: 'modes held too loosely', transmission: held });
  let lostModes = 0;
  let inBends: InTheBends = { powers: lay.powers, modesLeft: 1 };
  fibre.bends.forEach((bend, i) => {
    const loss = bendLoss(launch, bend, meeting, taker, inBends, draw);
    inBends = loss.behind;
    lostModes = Math.max(lostModes, loss.lostModes);
    inFibre.push({
      id: `bend-${i + 1}`,
      group: 'fibre',
      label: `bend ${i + 1}`,
      transmission: asking.setRight?.bend(i, loss.transmission) ?? loss.transmission,
    });
  });
  fibre.connectors.between.forEach(({ loss }, i) => {
    const transmission = transmissionFromNepers(Math.max(0, draw.at(loss)));
    inFibre.push({ id: `joint-${i + 1}`, group: 'fibre', label: `joint ${i + 1} on the way`, transmission });
  });
  const out: Loss[] = [
    {
      id: 'exit-facet',
      group: 'output',
      label: 'exit facet',
      transmission: endTransmission(fibre.ends.out, index),
    },
  ];
  if (output !== null) {
    const transmission = surfacesTransmission(output.collimator, wavelength, draw);
    out.push({ id: 'output-lens', group: 'output', label: 'output lens', transmission });
  }

  const losses = [...path, ...lens, entry, ...overlap, ...inFibre, ...out];
  const product = (some: readonly Loss[]) =>
    some.reduce((total, { transmission }) => total * transmission, 1);
  const arrived = product(path) * product(lens);
  const entered = arrived * entryThrough;
  // of what arrives, only the light that lands on the cladding's disc meets the glass and can travel in it
  const onGlass = Math.max(
    chain.guided,
    withinCladding(launch, draw, beamAt(meeting, distance, meeting.aim), wavelength),
  );
  // what no mode holds for long is in the cladding soon
  const cladding = entered * (onGlass - chain.guided);
  const stray = cladding + entered * chain.guided * (1 - held);
  return {
    losses,
    chain,
    distance,
    bestDistance: best.distance,
    output: product(losses),
    beforeFacet: 1 - arrived,
    reflected: (arrived - entered) * onGlass,
    cladding,
    beyondCladding: arrived * (1 - onGlass),
    claddingAtFarEnd: stray * claddingSurvival(launch, draw) * product(out),
    lostModes,
    powersOut: inBends.powers,
    attenuation,
  };
}

function withinCladding(launch: Launch, draw: Draw, beam: FacetBeam, wavelength: number): number {
  const radius = draw.at(launch.fibre.claddingDiameter) / 2;
  const { radiusX, radiusY } = spotRadii(beam, wavelength);
  // beyond 3.3 beam radii less than 4e-10 of the light is left
  const near = radius - Math.hypot(beam.offsetX, beam.offsetY);
  if (near > 3.3 * Math.max(radiusX, radiusY)) return 1;
  return powerThroughAperture(
    { radiusX, radiusY, azimuth: beam.azimuth, centreX: beam.offsetX, centreY: beam.offsetY },
    { semiAxisX: radius, semiAxisY: radius },
  );
}

/** 1/e² radii at the facet along the beam's own axes, m. */
function spotRadii(
  beam: FacetBeam,
  wavelength: number,
): { readonly radiusX: number; readonly radiusY: number } {
  const radius = (waist: number, z: number, m2: number) =>
    waist * Math.sqrt(1 + ((z * m2 * wavelength) / (Math.PI * waist * waist)) ** 2);
  return {
    radiusX: radius(beam.waistRadiusX, beam.waistZX, beam.m2X),
    radiusY: radius(beam.waistRadiusY, beam.waistZY, beam.m2Y),
  };
}

/** From the output lens to the fibre's end, m: for the launch's own light unless set for other light. */
export function outputTipDistance(launch: Launch, wavelength: number, draw: Draw): number | null {
  if (launch.output === null) return null;
  const lens = launch.output.collimator;
  switch (lens.focus.kind) {
    case 'best':
      return focalLengthFor(lens, wavelength, draw);
    case 'wavelength':
      return focalLengthFor(lens, draw.at(lens.focus.wavelength), draw);
    case 'distance':
      return draw.at(lens.focus.distance);
  }
}
