import { wavelengthText } from '../forecast/remark-text.ts';
import type {
  Beam,
  BeamAxis,
  Collimator,
  Fibre,
  FocusSetting,
  Launch,
  Misalignment,
  OutputCollimator,
  PathElement,
} from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import { figure, statedText } from './figures.ts';
import type { Term } from './section.ts';

/**
 * What stands on the bench, part by part as the light meets them.
 *
 * @param bestFor what the best focus is best for
 */
export function launchTerms(
  launch: Launch,
  bestFor: 'the most light' | 'the most light in LP01' = 'the most light',
): readonly Term[] {
  const { laser, path, collimator, fibre, output, misalignment } = launch;
  const polarization = laser.polarization === 'linear' ? 'linearly polarised' : 'of no known polarisation';
  return [
    {
      term: 'laser',
      text: named(
        laser.name,
        `${statedText(laser.wavelength, 'length', 'nm')}, ${statedText(laser.power, 'power')}, ${polarization}`,
      ),
    },
    { term: 'beam', text: beamText(laser.beam) },
    { term: 'path', text: pathText(path, collimator === null ? 'the fibre' : 'the lens') },
    ...(collimator === null ? [] : [{ term: 'lens', text: collimatorText(collimator, bestFor) }]),
    { term: 'fibre', text: fibreText(fibre) },
    ...(output === null ? [] : [{ term: 'output', text: outputText(output.collimator) }]),
    { term: 'aim', text: misalignment === null ? 'walked by hand' : aimText(misalignment) },
  ];
}

const named = (name: string | null, text: string): string => (name === null ? text : `${name}: ${text}`);

/** Diameters are 1/e² of intensity, as everywhere. */
export function beamText(beam: Beam): string {
  switch (beam.kind) {
    case 'round':
      return axisText(beam.axis);
    case 'elliptic': {
      const turned = beam.azimuth.value === 0 ? '' : `; turned by ${statedText(beam.azimuth, 'angle')}`;
      return `x: ${axisText(beam.x)}; y: ${axisText(beam.y)}${turned}`;
    }
  }
}

function axisText(axis: BeamAxis): string {
  const quality = `M² ${statedText(axis.quality, 'number')}`;
  switch (axis.kind) {
    case 'waist':
      return `${statedText(axis.waistDiameter, 'length')} across at its waist, ${placeText(axis.waistPosition.value)}; ${quality}`;
    case 'spread':
      return (
        `${statedText(axis.diameter, 'length')} across ${placeText(axis.at.value)}, spreading by ` +
        `${statedText(axis.fullDivergence, 'angle')} (full angle); ${quality}`
      );
    case 'diameter':
      return `${statedText(axis.diameter, 'length')} across ${placeText(axis.at.value)}, its waist taken to be at the exit; ${quality}`;
  }
}

/** Where along the path, counted from the laser's exit. */
function placeText(position: number): string {
  if (position === 0) return 'at the laser’s exit';
  const distance = writeValue(Math.abs(position), 'length');
  // “behind” is downstream everywhere else, and this waist lies the other way
  return position > 0
    ? `${distance} from the laser’s exit`
    : `${distance} before the laser’s exit, within it`;
}

/** `210 mm, mirror M1, 150 mm: 360 mm in all to the lens`. */
function pathText(path: readonly PathElement[], goal: string): string {
  if (path.length === 0) return `${goal} stands right at the laser’s exit`;
  const length = path.reduce(
    (sum, element) => sum + (element.kind === 'space' ? element.length.value : 0),
    0,
  );
  const spaces = path.filter(({ kind }) => kind === 'space').length;
  const all = spaces > 1 ? `: ${writeValue(length, 'length')} in all to ${goal}` : `, then ${goal}`;
  return path.map(elementText).join(', ') + all;
}

function elementText(element: PathElement): string {
  switch (element.kind) {
    case 'space':
      return writeValue(element.length.value, 'length');
    case 'mirror':
      return `mirror ${element.name}`;
    case 'lens':
      return `lens ${element.name} (${writeValue(element.focalLength.value, 'length')})`;
    case 'stop':
      return `stop ${element.name} (${writeValue(element.diameter.value, 'length')} wide)`;
    case 'filter':
      return `filter ${element.name}`;
  }
}

function collimatorText(
  { name, focalLength, designWavelength, focus, clearAperture }: Collimator,
  bestFor: string,
): string {
  const light = designWavelength === null ? '' : ` in ${wavelengthText(designWavelength.value)} light`;
  const aperture = clearAperture === null ? '' : `, ${writeValue(clearAperture.value, 'length')} clear`;
  return named(
    name,
    `focal length ${statedText(focalLength, 'length')}${light}${aperture}; ${focus.kind === 'best' ? `focused for ${bestFor}` : focusText(focus)}`,
  );
}

function focusText(focus: FocusSetting): string {
  switch (focus.kind) {
    case 'best':
      return 'focused for the most light';
    case 'wavelength':
      return `focus left as it was set for ${wavelengthText(focus.wavelength.value)} light`;
    case 'distance':
      return `fibre tip ${writeValue(focus.distance.value, 'length')} behind the lens`;
  }
}

function outputText({ focalLength, focus }: OutputCollimator): string {
  const set = focus.kind === 'best' ? 'set to collimate the light' : focusText(focus);
  return `a lens of focal length ${statedText(focalLength, 'length')}; ${set}`;
}

/** What is written is exact; what is zero is not repeated. */
export function aimText({ offsetX, offsetY, tiltX, tiltY, defocus }: Misalignment): string {
  const parts = [
    [offsetX, 'length', 'aside in x'],
    [offsetY, 'length', 'aside in y'],
    [tiltX, 'angle', 'tilted in x'],
    [tiltY, 'angle', 'tilted in y'],
    [defocus, 'length', 'out of focus'],
  ] as const;
  const off = parts.filter(([{ value, uncertainty }]) => value !== 0 || uncertainty !== 0);
  if (off.length === 0) return 'perfect, as written';
  return `as written: ${off.map(([entry, dimension, way]) => `${statedText(entry, dimension)} ${way}`).join(', ')}`;
}

function fibreText({
  name,
  type,
  profile,
  material,
  coreDiameter,
  numericalAperture,
  length,
}: Fibre): string {
  const kind = [
    type,
    profile === 'step' ? 'step index' : 'graded index',
    material === 'silica' ? 'glass' : 'acrylic',
  ];
  return named(
    name,
    `${kind.filter((word) => word !== null).join(', ')}; core ${statedText(coreDiameter, 'length')}, ` +
      `NA ${statedText(numericalAperture, 'number')}, ${figure(length.value, 'length', 3)} long`,
  );
}
