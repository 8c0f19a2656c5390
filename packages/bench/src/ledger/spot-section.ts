import type { Expected, ExpectedFibre, ExpectedSpot, Forecast } from '../forecast/expected.ts';
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
      text:
        `the light arrives within ${writeValue(facet.halfAngle, 'angle', 2, '°')} of the axis; ` +
        `the fibre accepts ${writeValue(acceptance, 'angle', 2, '°')}`,
    },
    { term: 'modes', text: modesText(fibre) },
    {
      term: 'taken',
      text: `${expectedText({ value: coupling.guided, ...coupling.guidedInterval }, 'fraction')} of the light arriving here is guided${fundamentalText(coupling)}`,
    },
    { term: 'at best', text: atBestText(coupling) },
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
  const doubt = fewest === most ? '' : ` (${fewest} to ${most})`;
  return `${v}: ${lpModes === 1 ? 'one LP mode' : `${lpModes} LP modes`}${doubt}${oriented}; one mode alone only in light above ${cutoff}`;
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

function atBestText({ bestGuided, bestFundamental, guided }: Forecast['coupling']): string {
  const best = `with the best focus and perfect aim this lens and fibre would take ${shareText(bestGuided)}`;
  const alone =
    bestFundamental === null || Math.abs(bestFundamental - bestGuided) < 1e-9
      ? ''
      : `, or ${shareText(bestFundamental)} in LP01`;
  const there = bestGuided - guided < 0.01 * bestGuided ? ': you are there' : '';
  return `${best}${alone}${there}`;
}

const alike = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 0.005 * Math.max(Math.abs(a), Math.abs(b));
