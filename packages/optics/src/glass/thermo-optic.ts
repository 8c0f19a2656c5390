/** How the index of a glass follows its temperature. */
import { OutOfRange } from '../out-of-range.ts';
import type { Glass, ThermoOptic } from './glass.ts';
import { refractiveIndex } from './refractive-index.ts';

/** 20 °C, where the catalogue's constants begin, K. */
const catalogueTemperature = 293.15;

/** Where the catalogue's constants hold, K: −100 °C to 140 °C; from memory. */
const catalogueRange = [173.15, 413.15] as const;

/** Room temperature, K, for coefficients that come without a temperature: 10 °C to 35 °C, our own reading of the words. */
const roomRange = [283.15, 308.15] as const;

/**
 * dn/dT of the index against vacuum, 1/K. Against air at one atmosphere it is about 0.9e-6·n higher, because air thins.
 *
 * @param wavelength vacuum, m
 * @param temperature K; left out: 20 °C
 * @throws {OutOfRange} if no coefficient is known for this glass, wavelength or temperature
 * @source catalogue form (n² − 1)/(2n)·[D₀ + 2D₁ΔT + 3D₂ΔT² + (E₀ + 2E₁ΔT)/(λ² − λ_TK²)], from memory;
 *   otherwise the source named in the glass
 */
export function thermoOpticCoefficient(
  glass: Glass,
  wavelength: number,
  temperature: number = catalogueTemperature,
): number {
  const { name, thermal, range } = glass;
  if (thermal === null) {
    throw new OutOfRange({
      where: 'thermoOpticCoefficient glass',
      what: `no temperature coefficient of ${name} is known here`,
      mend: 'Keep its temperature, or name a glass that has one, such as `N-BK7`.',
    });
  }
  const [coldest, hottest] = thermal.kind === 'catalogue' ? catalogueRange : roomRange;
  if (!(temperature >= coldest && temperature <= hottest)) {
    throw new OutOfRange({
      where: 'thermoOpticCoefficient temperature',
      what: `${temperature} K is outside ${coldest} K to ${hottest} K, where dn/dT of ${name} is known`,
      mend: 'Give a temperature in kelvins inside that range.',
    });
  }
  switch (thermal.kind) {
    case 'catalogue':
      return fromCatalogue(thermal, refractiveIndex(glass, wavelength), wavelength, temperature);
    case 'points':
      return between(thermal.points, wavelength, name);
    case 'constant':
      if (!(wavelength >= range[0] && wavelength <= range[1])) throw outside(wavelength, range, name);
      return thermal.perKelvin;
  }
}

function fromCatalogue(
  { d0, d1, d2, e0, e1, resonance }: Extract<ThermoOptic, { kind: 'catalogue' }>,
  index: number,
  wavelength: number,
  temperature: number,
): number {
  const warmer = temperature - catalogueTemperature;
  const squareDistance = (wavelength * 1e6) ** 2 - resonance ** 2; // µm²
  const bracket = d0 + 2 * d1 * warmer + 3 * d2 * warmer ** 2 + (e0 + 2 * e1 * warmer) / squareDistance;
  return ((index ** 2 - 1) / (2 * index)) * bracket;
}

function between(
  points: readonly { readonly wavelength: number; readonly perKelvin: number }[],
  wavelength: number,
  name: string,
): number {
  const next = points.findIndex((point) => point.wavelength >= wavelength);
  const right = points[next];
  if (right?.wavelength === wavelength) return right.perKelvin;
  const left = points[next - 1];
  if (left === undefined || right === undefined) {
    throw outside(wavelength, [points[0]!.wavelength, points.at(-1)!.wavelength], name);
  }
  const share = (wavelength - left.wavelength) / (right.wavelength - left.wavelength);
  return left.perKelvin + share * (right.perKelvin - left.perKelvin);
}

function outside(
  wavelength: number,
  [shortest, longest]: readonly [number, number],
  name: string,
): OutOfRange {
  return new OutOfRange({
    where: 'thermoOpticCoefficient wavelength',
    what: `${wavelength} m is outside ${shortest} m to ${longest} m, where dn/dT of ${name} is known`,
    mend: 'Give a vacuum wavelength in metres inside that range.',
  });
}
