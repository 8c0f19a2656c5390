/** What fibres are made of: fused silica, germania, and the two mixed. */
import { OutOfRange } from '../out-of-range.ts';
import type { Dispersion } from './dispersion.ts';
import type { Glass } from './glass.ts';

interface SellmeierTerm {
  readonly strength: number;
  readonly resonance: number;
}

const silicaTerms: readonly SellmeierTerm[] = [
  { strength: 0.6961663, resonance: 0.0684043 },
  { strength: 0.4079426, resonance: 0.1162414 },
  { strength: 0.8974794, resonance: 9.896161 },
];

const germaniaTerms: readonly SellmeierTerm[] = [
  { strength: 0.80686642, resonance: 0.068972606 },
  { strength: 0.71815848, resonance: 0.15396605 },
  { strength: 0.85416831, resonance: 11.841931 },
];

function sellmeier(terms: readonly SellmeierTerm[]): Dispersion {
  return { form: 'sellmeier with resonances', offset: 0, terms };
}

/** Pure silica, the cladding of most fibres. */
export const fusedSilica: Glass = {
  name: 'fused silica',
  alsoCalled: ['silica', 'SiO2'],
  dispersion: sellmeier(silicaTerms),
  range: [0.21e-6, 3.71e-6],
  indexSpread: null,
  thermal: {
    kind: 'points',
    // at 1550 nm the middle of four samples, 8.16e-6 to 8.53e-6
    points: [
      { wavelength: 0.6328e-6, perKelvin: 8.74e-6 },
      { wavelength: 1.55e-6, perKelvin: 8.345e-6 },
    ],
    source:
      'G. M. Rego, Sensors 23, 6023 (2023), abstract: 8.74e-6 in the visible, 8.16e-6 to 8.53e-6 at 1550 nm',
  },
  source: 'I. H. Malitson, J. Opt. Soc. Am. 55, 1205 (1965), 20 °C, against air',
  obtained: 'read in the refractiveindex.info database (CC0)',
};

/** Pure GeO₂ glass, the other end of germanium-doped silica; nobody makes parts of it. */
export const germania: Glass = {
  name: 'GeO2 glass',
  alsoCalled: ['GeO2', 'germania'],
  dispersion: sellmeier(germaniaTerms),
  range: [0.36e-6, 4.3e-6],
  indexSpread: null,
  thermal: null,
  source: 'J. W. Fleming, Appl. Opt. 23, 4486 (1984)',
  obtained: 'read in the refractiveindex.info database (CC0)',
};

/**
 * Silica with germania in it, the core glass of most fibres: each Sellmeier coefficient lies between those of the two
 * pure glasses in proportion to the mole fraction.
 *
 * Exact at both ends by construction; between them an interpolation, for the few per cent of a fibre core in particular.
 *
 * @param moleFraction of GeO₂, 0 to 1
 * @throws {OutOfRange} outside 0 to 1
 * @source J. W. Fleming, Appl. Opt. 23, 4486 (1984); the mixing rule from memory
 */
export function germaniaDopedSilica(moleFraction: number): Glass {
  if (!(moleFraction >= 0 && moleFraction <= 1)) {
    throw new OutOfRange({
      where: 'germaniaDopedSilica moleFraction',
      what: `${moleFraction} is not a fraction`,
      mend: 'Give the GeO₂ content between 0 and 1; 3.5 mol% is 0.035.',
    });
  }
  const mix = (silica: number, oxide: number) => silica + moleFraction * (oxide - silica);
  return {
    name: `silica with ${Number((moleFraction * 100).toPrecision(12))} mol% GeO2`,
    alsoCalled: [],
    dispersion: sellmeier(
      silicaTerms.map((term, i) => ({
        strength: mix(term.strength, germaniaTerms[i]!.strength),
        resonance: mix(term.resonance, germaniaTerms[i]!.resonance),
      })),
    ),
    range: [
      Math.max(fusedSilica.range[0], germania.range[0]),
      Math.min(fusedSilica.range[1], germania.range[1]),
    ],
    indexSpread: null,
    thermal: null,
    source:
      'coefficients of I. H. Malitson (1965) and J. W. Fleming (1984), mixed in proportion to the mole fraction',
    obtained:
      'computed with coefficients read in the refractiveindex.info database (CC0); the mixing rule from memory',
  };
}
