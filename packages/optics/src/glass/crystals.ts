/** Crystals. Where the index depends on the polarisation, o is the ordinary ray and e the extraordinary one, each by name. */
import type { Dispersion } from './dispersion.ts';
import type { Glass } from './glass.ts';

const obtained = 'read in the refractiveindex.info database (CC0)';

/** Strength and resonance (µm), as the papers print them. */
function withResonances(offset: number, ...terms: readonly (readonly [number, number])[]): Dispersion {
  return {
    form: 'sellmeier with resonances',
    offset,
    terms: terms.map(([strength, resonance]) => ({ strength, resonance })),
  };
}

/** Strength and squared resonance (µm²). */
function withSquaredResonances(...terms: readonly (readonly [number, number])[]): Dispersion {
  return {
    form: 'sellmeier with squared resonances',
    terms: terms.map(([strength, resonanceSquared]) => ({ strength, resonanceSquared })),
  };
}

const dodge =
  'M. J. Dodge, in Handbook of Laser Science and Technology IV, Optical Materials 2 (1986), p. 30, after I. H. Malitson and M. J. Dodge (1972); 20 °C';
const zelmon = 'D. E. Zelmon, D. L. Small, D. Jundt, J. Opt. Soc. Am. B 14, 3319 (1997); congruent, 21 °C';

/** Crystals that lenses and windows are made of; each entry carries its source and the wavelengths it is good for. */
export const crystals: readonly Glass[] = [
  {
    name: 'CaF2',
    alsoCalled: ['calcium fluoride', 'fluorite'],
    dispersion: withResonances(0, [0.5675888, 0.050263605], [0.4710914, 0.1003909], [3.8484723, 34.64904]),
    range: [0.23e-6, 9.7e-6],
    indexSpread: null,
    thermal: null,
    source: 'I. H. Malitson, Appl. Opt. 2, 1103 (1963), 24 °C, against air',
    obtained,
  },
  {
    name: 'sapphire o',
    alsoCalled: ['Al2O3 o'],
    dispersion: withResonances(0, [1.4313493, 0.0726631], [0.65054713, 0.1193242], [5.3414021, 18.028251]),
    range: [0.2e-6, 5e-6],
    indexSpread: null,
    thermal: null,
    source: dodge,
    obtained,
  },
  {
    name: 'sapphire e',
    alsoCalled: ['Al2O3 e'],
    dispersion: withResonances(0, [1.5039759, 0.0740288], [0.55069141, 0.1216529], [6.5927379, 20.072248]),
    range: [0.2e-6, 5e-6],
    indexSpread: null,
    thermal: null,
    source: dodge,
    obtained,
  },
  {
    name: 'LiNbO3 o',
    alsoCalled: ['lithium niobate o'],
    dispersion: withSquaredResonances([2.6734, 0.01764], [1.229, 0.05914], [12.614, 474.6]),
    range: [0.4e-6, 5e-6],
    indexSpread: null,
    thermal: null,
    source: zelmon,
    obtained,
  },
  {
    name: 'LiNbO3 e',
    alsoCalled: ['lithium niobate e'],
    dispersion: withSquaredResonances([2.9804, 0.02047], [0.5981, 0.0666], [8.9543, 416.08]),
    range: [0.4e-6, 5e-6],
    indexSpread: null,
    thermal: null,
    source: zelmon,
    obtained,
  },
  {
    name: 'Bi4Ge3O12',
    alsoCalled: ['bismuth germanate', 'BGO'],
    dispersion: withResonances(0, [3.1218393, 0.1807]),
    range: [0.305e-6, 1e-6],
    indexSpread: null,
    thermal: {
      kind: 'points',
      points: [
        { wavelength: 0.6328e-6, perKelvin: 3.9e-5 },
        { wavelength: 1.1523e-6, perKelvin: 3.5e-5 },
      ],
      source: 'P. A. Williams et al., Appl. Opt. 35, 3562 (1996), abstract',
    },
    source: 'P. A. Williams et al., Appl. Opt. 35, 3562 (1996)',
    obtained,
  },
  {
    name: 'Bi12SiO20',
    alsoCalled: ['bismuth silicate', 'BSO'],
    dispersion: withResonances(1.72777, [3.01705, 0.2661]),
    range: [0.48e-6, 0.7e-6],
    indexSpread: null,
    thermal: null,
    source:
      'M. Gospodinov et al., Bulgarian J. Phys. 15, 140 (1988), as cited in Handbook of Optics, 3rd ed., vol. 4',
    obtained,
  },
];
