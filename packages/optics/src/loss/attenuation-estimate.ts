import { OutOfRange } from '../out-of-range.ts';
import { infraredAttenuation, rayleighAttenuation } from './attenuation.ts';
import { type Band, isInBand } from './band.ts';
import { nepersFromDecibel, nepersPerMetreFromDecibelPerKilometre } from './decibel.ts';
import type { Provenance } from './evidence.ts';

/** What to assume of a fibre whose attenuation nobody stated. Np/m of power. */
export interface AttenuationEstimate {
  /** Scattering (of a germanium-doped core, if silica) and infrared tail: the glass without any flaw. */
  readonly floor: number;
  readonly expected: number;
  readonly low: number;
  readonly high: number;
}

/**
 * Attenuation of a fibre of this material about which nothing else is known. A wide guess, origin `assumed`: water,
 * draw defects and microbends differ from fibre to fibre, and a specification for 1550 nm says nothing of the visible.
 *
 * @param wavelength vacuum wavelength, m: 0.38 to 1.7 µm for silica, 0.44 to 0.66 µm for acrylic
 * @throws {OutOfRange} outside these ranges
 * @source `silicaMargins`, `acrylicWindows`
 */
export function attenuationEstimate(wavelength: number, material: 'silica' | 'acrylic'): AttenuationEstimate {
  switch (material) {
    case 'silica':
      return silicaEstimate(wavelength);
    case 'acrylic':
      return acrylicEstimate(wavelength);
  }
}

/** Multiples of the floor that real silica fibres show at a wavelength (m). */
export interface SilicaMargin extends Provenance {
  readonly wavelength: number;
  readonly low: number;
  readonly expected: number;
  readonly high: number;
}

/** Constant outside these two wavelengths, straight in the logarithm of the wavelength between them. */
export const silicaMargins: readonly [SilicaMargin, SilicaMargin] = [
  {
    wavelength: 0.7e-6,
    low: 1.2,
    expected: Math.sqrt(1.2 * 3), // middle of a factor
    high: 3,
    source: 'in the visible a real fibre has 1.2 to 3 times the Rayleigh part: common practice, no source',
    evidence: 'common practice',
  },
  {
    wavelength: 1.55e-6,
    low: 1,
    expected: nepersPerMetreFromDecibelPerKilometre(0.2) / silicaFloor(1.55e-6),
    high: nepersPerMetreFromDecibelPerKilometre(0.3) / silicaFloor(1.55e-6),
    source:
      'T. Miya et al., Electron. Lett. 15, 106 (1979): 0.2 dB/km at 1.55 µm; ceiling 0.3 dB/km of ITU-T G.652.D cable',
    evidence: 'secondary',
  },
];

function silicaEstimate(wavelength: number): AttenuationEstimate {
  mustBeInBand(wavelength, { from: 0.38e-6, to: 1.7e-6 }, 'silica');
  const [visible, infrared] = silicaMargins;
  const place =
    Math.log(wavelength / visible.wavelength) / Math.log(infrared.wavelength / visible.wavelength);
  const share = Math.min(1, Math.max(0, place));
  const floor = silicaFloor(wavelength);
  const times = (which: 'low' | 'expected' | 'high'): number =>
    floor * (visible[which] + share * (infrared[which] - visible[which]));
  return { floor, low: times('low'), expected: times('expected'), high: times('high') };
}

function silicaFloor(wavelength: number): number {
  return rayleighAttenuation(wavelength) + infraredAttenuation(wavelength);
}

/** What acrylic fibre takes at a wavelength (m), Np/m. */
export interface AcrylicWindow extends Provenance {
  readonly wavelength: number;
  readonly low: number;
  readonly high: number;
}

const acrylic = (wavelength: number, low: number, high: number, source: string): AcrylicWindow => ({
  wavelength,
  low: nepersFromDecibel(low), // printed in dB/m
  high: nepersFromDecibel(high),
  source,
  evidence: 'from memory',
});
const stated = 'acrylic fibre, transmission windows: remembered figures';
const shape = 'remembered shape of the acrylic spectrum, with a generous width';

/**
 * The windows near 520, 570 and 650 nm and the C-H overtone near 625 nm between them; straight lines join the rows.
 * The overtone is steep: a few nanometres double the loss there.
 */
export const acrylicWindows: readonly AcrylicWindow[] = [
  acrylic(440e-9, 0.08, 0.2, shape),
  acrylic(480e-9, 0.07, 0.14, shape),
  acrylic(520e-9, 0.07, 0.1, stated),
  acrylic(545e-9, 0.07, 0.15, shape),
  acrylic(570e-9, 0.07, 0.1, stated),
  acrylic(600e-9, 0.1, 0.2, shape),
  acrylic(625e-9, 0.25, 0.6, shape),
  acrylic(650e-9, 0.15, 0.2, stated),
  acrylic(660e-9, 0.15, 0.3, shape),
];

function acrylicEstimate(wavelength: number): AttenuationEstimate {
  const rows = acrylicWindows;
  mustBeInBand(wavelength, { from: rows[0]!.wavelength, to: rows.at(-1)!.wavelength }, 'acrylic');
  const to = rows.slice(1).find((row) => row.wavelength >= wavelength) ?? rows.at(-1)!;
  const from = rows[rows.indexOf(to) - 1]!;
  const share = (wavelength - from.wavelength) / (to.wavelength - from.wavelength);
  const low = from.low + share * (to.low - from.low);
  const high = from.high + share * (to.high - from.high);
  return { floor: acrylicFloor(wavelength), low, expected: Math.sqrt(low * high), high };
}

/** Scattering of acrylic, 13 dB/km at 633 nm and as λ⁻⁴. @source T. Kaino et al. on low-loss acrylic fibre (from memory) */
function acrylicFloor(wavelength: number): number {
  return nepersPerMetreFromDecibelPerKilometre(13) * (633e-9 / wavelength) ** 4;
}

function mustBeInBand(wavelength: number, band: Band, material: string): void {
  if (!isInBand(wavelength, band)) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `nothing is known of ${material} fibre at ${wavelength} m`,
      mend: `Ask between ${band.from} m and ${band.to} m, or state the fibre's attenuation.`,
    });
  }
}
