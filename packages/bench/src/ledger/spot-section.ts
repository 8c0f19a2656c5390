import { convergence, paraxialUpTo } from '../forecast/convergence.ts';
import type { Expected, ExpectedFibre, ExpectedSpot, Forecast, OffAxis } from '../forecast/expected.ts';
import { fewModedBelow } from '../forecast/fibre-taker.ts';
import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import { expectedText, shareText } from './figures.ts';
import type { Section, Term } from './section.ts';

/** The spot at the facet against what the fibre would like, and what it takes of it. */
export function spotSection({ facet, fibre, coupling, launch }: Forecast): Section {
  const acceptance = Math.asin(Math.min(1, launch.fibre.numericalAperture.value));
  const terms: Term[] = [
    { term: 'spot', text: spotText(facet) },
    { term: 'core', text: coreText(fibre, launch.fibre.coreDiameter.value) },
    {
      term: 'angle',
      text: `${arrivalText(launch, facet.halfAngle)}; the fibre accepts ${writeValue(acceptance, 'angle', 2, '°')}`,
    },
    { term: 'modes', text: modesText(fibre) },
    {
      term: 'taken',
      text: `${expectedText({ value: coupling.guided, ...coupling.guidedInterval }, 'fraction')} of the light arriving here is guided${fundamentalText(coupling)}`,
    },
    { term: 'at best', text: atBestText(coupling, launch.collimator === null) },
  ];
  return { heading: 'At the facet: the spot against the core', blocks: [{ kind: 'terms', rows: terms }] };
}

/** Size at the facet plane, and where the waist lies. */
export function spotText(facet: ExpectedSpot): string {
  const { spotDiameterX: x, spotDiameterY: y } = facet;
  const size = alike(x, y)
    ? `${writeValue(x, 'length')} across (1/e² of intensity)`
    : `${writeValue(x, 'length')} by ${writeValue(y, 'length')} (1/e² of intensity, x by y)`;
  if (alike(facet.waistOffsetX, facet.waistOffsetY) && alike(facet.waistDiameterX, facet.waistDiameterY)) {
    return `${size}; ${waistText(facet.waistOffsetX, facet.waistDiameterX)}`;
  }
  const waistX = waistText(facet.waistOffsetX, facet.waistDiameterX);
  const waistY = waistText(facet.waistOffsetY, facet.waistDiameterY);
  return `${size}; in x ${waistX}; in y ${waistY}`;
}

function waistText(offset: number, diameter: number): string {
  const waist = writeValue(diameter, 'length');
  // nobody sets a focus to a hundredth of a micrometre
  if (Math.abs(offset) < 1e-8) return `its waist, ${waist}, lies on the facet`;
  const distance = writeValue(Math.abs(offset), 'length', 2);
  return offset > 0
    ? `its waist, ${waist}, would lie ${distance} further on, inside the fibre`
    : `its waist, ${waist}, lies ${distance} before the facet`;
}

function coreText(
  { bestSpotDiameter, modeFieldDiameter, lpModes }: ExpectedFibre,
  coreDiameter: number,
): string {
  const core = `${writeValue(coreDiameter, 'length')} across`;
  if (bestSpotDiameter === null) return core;
  const field =
    modeFieldDiameter === null
      ? ''
      : ` (mode field diameter ${writeValue(modeFieldDiameter, 'length')}, Petermann II)`;
  const mode = lpModes === 1 ? 'its one mode' : 'its fundamental mode LP01';
  return `${core}; ${mode} suits a spot of ${writeValue(bestSpotDiameter, 'length')}${field}`;
}

/** Within which angle light arrives, and whether the model still holds there. */
export function arrivalText(launch: Launch, halfAngle: number): string {
  const arrives = convergence(launch, halfAngle);
  const angle = writeValue(Math.asin(Math.min(1, arrives)), 'angle', 2, '°');
  const cut = arrives < halfAngle ? ', which is what the lens lets through' : '';
  if (arrives <= paraxialUpTo) return `the light arrives within ${angle} of the axis${cut}`;
  return `the light arrives within ${angle} of the axis${cut}, too steep for this model`;
}

/** How many modes, and whether the doubt about V leaves that open. */
export function modesText({
  vNumber,
  lpModes,
  lpModesRange,
  modesWithOrientation,
  cutoffWavelength,
}: ExpectedFibre): string {
  const v = `V number ${expectedText(vNumber, 'number')}`;
  const cutoff = writeValue(cutoffWavelength, 'length', 3, 'nm');
  if (lpModes === null) return `${v}: so many modes that rays describe them`;
  const [fewest, most] = lpModesRange ?? [lpModes, lpModes];
  if (most === 1) return `${v}: one mode, LP01; in light below ${cutoff} there would be more`;
  const oriented =
    modesWithOrientation === null || lpModes < 2 ? '' : `, ${modesWithOrientation} with their orientations`;
  // of a core with many modes nobody would ask for light that long
  const alone = vNumber.value < fewModedBelow ? `; one mode alone only in light above ${cutoff}` : '';
  const doubt = fewest === most ? '' : ` (${fewest} to ${most})`;
  return `${v}: ${lpModes === 1 ? 'one LP mode' : `${lpModes} LP modes`}${doubt}${oriented}${alone}`;
}

function fundamentalText({ fundamental, fundamentalInterval, guided }: Forecast['coupling']): string {
  if (fundamental === null) return '';
  if (Math.abs(fundamental - guided) < 1e-9) return ''; // LP01 is all there is
  const value: Expected = {
    value: fundamental,
    ...(fundamentalInterval ?? { low: fundamental, high: fundamental }),
  };
  return `; ${expectedText(value, 'fraction')} in LP01 alone`;
}

/** What the same parts could take, and where that is aimed. */
export function atBestText(coupling: Forecast['coupling'], withoutLens: boolean): string {
  const { bestGuided, bestGuidedAt, bestFundamental, guided } = coupling;
  const parts = withoutLens ? 'this beam and fibre' : 'this lens and fibre';
  const focus = withoutLens ? 'at the best place' : 'with the best focus';
  const one =
    bestFundamental === null || Math.abs(bestFundamental - bestGuided) < 1e-9 ? null : bestFundamental;
  const isThere = bestGuided - guided < 0.01 * bestGuided;
  const there = isThere ? ': you are there' : '';
  // where less than a hundredth is to be had beside the axis, nobody is sent there
  if (bestGuidedAt !== null && !isThere) {
    const alone = one === null ? '' : `; on the axis ${shareText(one)} in LP01`;
    return `${focus} ${parts} would take ${shareText(bestGuided)}, aimed ${besideText(bestGuidedAt)}, where this spot finds more modes${alone}`;
  }
  const alone = one === null ? '' : `, or ${shareText(one)} in LP01`;
  return `${focus} and perfect aim ${parts} would take ${shareText(bestGuided)}${alone}${there}`;
}

/** `2.1 µm beside the axis and tilted by 14 mrad`; what is a hundredth of it is not told. */
function besideText({ offsetX, offsetY, tiltX, tiltY }: OffAxis): string {
  const offset = Math.hypot(offsetX, offsetY);
  const tilt = Math.hypot(tiltX, tiltY);
  const parts = [
    ...(offset > 5e-8 ? [`${writeValue(offset, 'length', 2)} beside the axis`] : []),
    ...(tilt > 5e-4 ? [`tilted by ${writeValue(tilt, 'angle', 2)}`] : []),
  ];
  return parts.join(' and ');
}

const alike = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 0.005 * Math.max(Math.abs(a), Math.abs(b));
