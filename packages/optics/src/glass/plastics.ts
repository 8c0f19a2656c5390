/** Plastics of moulded lenses and of plastic fibres. 20 °C. */
import type { Glass, ThermoOptic } from './glass.ts';

const obtained = 'read in the refractiveindex.info database (CC0)';
const sultanova =
  'N. Sultanova, S. Kasarova, I. Nikolov, Acta Phys. Pol. A 116, 585 (2009), one-term fit: do not stretch it beyond its range';

/** Moulded parts differ by this with grade, moisture and temperature; from memory. */
const indexSpread = 2e-3;

const thermal: ThermoOptic = {
  kind: 'constant',
  perKelvin: -1.2e-4,
  halfWidth: 0.2e-4,
  source: 'common range for lens plastics, −1.0e-4 to −1.4e-4 per K; from memory',
};

/**
 * Plastics of which lenses and fibres are moulded or drawn; each entry carries its source and the wavelengths it
 * is good for.
 */
export const plastics: readonly Glass[] = [
  {
    name: 'PMMA',
    alsoCalled: ['acrylic', 'poly(methyl methacrylate)'],
    dispersion: {
      form: 'powers',
      constant: 2.1778,
      terms: [
        { factor: 6.1209e-3, power: 2 },
        { factor: -1.5004e-3, power: 4 },
        { factor: 2.3678e-2, power: -2 },
        { factor: -4.2137e-3, power: -4 },
        { factor: 7.3417e-4, power: -6 },
        { factor: -4.5042e-5, power: -8 },
      ],
    },
    range: [0.42e-6, 1.62e-6],
    indexSpread,
    thermal,
    source: 'G. Beadie et al., Appl. Opt. 54, F139 (2015), 20.1 °C, to 2e-4 for the sample measured',
    obtained,
  },
  {
    name: 'polycarbonate',
    alsoCalled: [],
    dispersion: {
      form: 'sellmeier with squared resonances',
      terms: [{ strength: 1.4182, resonanceSquared: 0.021304 }],
    },
    range: [0.4368e-6, 1.052e-6],
    indexSpread,
    thermal,
    source: sultanova,
    obtained,
  },
  {
    name: 'polystyrene',
    alsoCalled: [],
    dispersion: {
      form: 'sellmeier with squared resonances',
      terms: [{ strength: 1.4435, resonanceSquared: 0.020216 }],
    },
    range: [0.4368e-6, 1.052e-6],
    indexSpread,
    thermal,
    source: sultanova,
    obtained,
  },
];
