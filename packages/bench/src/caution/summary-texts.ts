import { type LaserClass, limitSetNames } from '@coreward/optics';
import { capital } from '../units/capital.ts';
import { writeValue } from '../units/write.ts';
import { atMostText } from './figures-of-caution.ts';
import { limitText, timeText, wavelengthText } from './limit-texts.ts';
import type { LineOfLight } from './line-of-light.ts';
import type { EyewearFor, LineSummary } from './summary.ts';

/** `520 nm, 23 mW: would be treated like class 3B here.` An estimate, never a finding. */
export function classText({ line, treatedLike }: LineSummary): string {
  const light = `${capital(line.title)}, ${wavelengthText(line.wavelength)}, ${atMostText(line.power, 'power')}`;
  if (treatedLike === null) {
    return `${light}: not evaluated; treat it like class 4 until your laser safety officer has looked.`;
  }
  const { wording, remarks, set, timeBase } = treatedLike;
  return `${light}: ${[wording, ...remarks].join('; ')} (estimate, ${limitSetNames[set]}, ${timeText(timeBase)}).${asksFor(treatedLike.treatedLike)}`;
}

/** What work with such light asks for where there are rules. @source a laser laboratory's page after IEC 60825: read */
function asksFor(treatedLike: LaserClass): string {
  switch (treatedLike) {
    case '3R':
      return ' Training is recommended for such light.';
    case '3B':
    case '4':
      return ' Such light is for a closed room, trained people and a laser safety officer.';
    default:
      return '';
  }
}

/** `OD 3 or more at 520 nm for 10 s.` */
export function eyewearText(
  { wavelength }: Pick<LineOfLight, 'wavelength'>,
  { density, exposureTime, wording }: EyewearFor,
): string {
  const light = wavelengthText(wavelength);
  const relies = exposureTime < 10 ? `; ${wording.split('; ').at(-1)}` : '';
  return density.atLeast === 0
    ? `${light}: under the limit assumed for ${timeText(exposureTime)}${relies} (estimate, ${limitSetNames[density.limit.set]}).`
    : `${light}: optical density ${density.atLeast} or more for ${timeText(exposureTime)}${relies} (estimate, ${limitSetNames[density.limit.set]}).`;
}

/** `Align with 1 mW at most, better 0.6 mW: a filter of optical density 1.4.` */
export function alignmentText(alignment: LineSummary['alignment']): string {
  if (alignment === null) {
    return 'No power is known here to align this light with: use a visible, continuous pilot of 1 mW at most over the same path.';
  }
  const { power, attenuation } = alignment;
  const better = power.better < power.power ? `, better ${limitText(power.better, 'power')}` : '';
  const filter =
    attenuation === 0
      ? 'the laser gives no more than that'
      : `that takes an optical density of ${writeValue(Math.ceil(attenuation * 10) / 10, 'number', 3)} or more, tilted, its reflection blocked`;
  return (
    `Align with ${limitText(power.power, 'power')} at most${better}: ${filter}. Look for it with ${viewing[power.viewing]}. ` +
    'That reduces the hazard; it does not remove it.'
  );
}

const viewing = {
  'diffuse spots': 'a matt card, seen from the side',
  'card, camera or detector only': 'a card, camera or detector only, or align with a visible pilot',
  'detector only': 'a detector only, or align with a visible pilot',
} as const;
