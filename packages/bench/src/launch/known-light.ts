import { attenuationEstimate, glassNamed, OutOfRange } from '@coreward/optics';
import { type Report, type Spot, under } from '../document/report.ts';
import { writeValue } from '../units/write.ts';
import type { Fibre, Launch } from './launch.ts';

/** What a fibre's core is counted as where its index is asked for. */
export const fibreGlass: Readonly<Record<Fibre['material'], string>> = {
  silica: 'fused silica',
  acrylic: 'PMMA',
};

/** Refuses light for which nothing is known of the fibre: neither its index nor, where it is not written, its attenuation. */
export function mustKnowFibre({ laser, fibre }: Launch, spot: Spot, report: Report): void {
  const { value: wavelength } = laser.wavelength;
  if (Number.isNaN(wavelength)) return;
  const glass = fibreGlass[fibre.material];
  const [shortest, longest] = glassNamed(glass).range;
  const light = writeValue(wavelength, 'length');
  if (wavelength < shortest || wavelength > longest) {
    const range = `from ${writeValue(shortest, 'length')} to ${writeValue(longest, 'length')}`;
    report.refuse(
      under(under(spot, 'laser'), 'wavelength').path,
      `the fibre’s ${glass} is known ${range}, not at ${light}`,
      `Write a wavelength ${range}; no other can be forecast through this fibre.`,
    );
  } else if (fibre.attenuation === null && !isEstimated(wavelength, fibre.material)) {
    report.refuse(
      under(under(spot, 'fibre'), 'attenuation').path,
      `\`attenuation\` is left out, and for ${fibre.material} fibre at ${light} nobody can estimate it`,
      'Write `attenuation: 0.2 dB/m` with your own value.',
    );
  }
}

function isEstimated(wavelength: number, material: Fibre['material']): boolean {
  try {
    attenuationEstimate(wavelength, material);
    return true;
  } catch (error) {
    if (error instanceof OutOfRange) return false;
    throw error;
  }
}
