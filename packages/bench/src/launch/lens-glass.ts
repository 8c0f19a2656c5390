import { glassNamed } from '@coreward/optics';
import { type Report, type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import type { Launch, OutputCollimator } from './launch.ts';

/** Refuses a lens whose glass is not known at a wavelength that this launch needs. */
export function mustKnowGlasses({ laser, collimator, output }: Launch, spot: Spot, report: Report): void {
  if (collimator !== null) mustKnowGlass(collimator, laser.wavelength, under(spot, 'collimator'), report);
  if (output !== null) {
    mustKnowGlass(output.collimator, laser.wavelength, under(under(spot, 'output'), 'collimator'), report);
  }
}

function mustKnowGlass(lens: OutputCollimator, wavelength: Entry, spot: Spot, report: Report): void {
  const { focalShift, designWavelength, focus } = lens;
  if (focalShift.kind === 'fixed') return;
  const [shortest, longest] = glassNamed(focalShift.glass).range;
  const needed = [wavelength, designWavelength, focus.kind === 'wavelength' ? focus.wavelength : null];
  const unknown = needed.find((entry) => entry !== null && (entry.value < shortest || entry.value > longest));
  if (unknown === undefined || unknown === null) return;
  const range = `${writeValue(shortest, 'length')} to ${writeValue(longest, 'length')}`;
  const what = `the index of ${focalShift.glass} is known from ${range}, not at ${writeValue(unknown.value, 'length')}`;
  report.refuse(
    under(spot, 'glass').path,
    what,
    'Write `focal shift: 0` and no `glass`, or a glass that is known there.',
  );
}
