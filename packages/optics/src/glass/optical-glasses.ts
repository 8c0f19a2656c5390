/** Glasses for lenses, by type designation. Against air, 20 °C. */
import type { Dispersion } from './dispersion.ts';
import type { Glass, ThermoOptic } from './glass.ts';

const obtained = 'read in the refractiveindex.info database (CC0)';
const sheet2017 = "glass maker's catalogue sheet for this type, January 2017 edition";

/** Strength and squared resonance (µm²), three times, as the sheets print them. */
function sellmeier(...coefficients: readonly (readonly [number, number])[]): Dispersion {
  return {
    form: 'sellmeier with squared resonances',
    terms: coefficients.map(([strength, resonanceSquared]) => ({ strength, resonanceSquared })),
  };
}

function catalogue(
  d0: number,
  d1: number,
  d2: number,
  e0: number,
  e1: number,
  resonance: number,
): ThermoOptic {
  return { kind: 'catalogue', d0, d1, d2, e0, e1, resonance };
}

/** Melts differ from the sheet by up to this in n_d at the usual grade. From memory. */
const indexSpread = 5e-4;

/** Optical glasses by their type designation; each entry carries its source and the wavelengths it is good for. */
export const opticalGlasses: readonly Glass[] = [
  {
    name: 'N-BK7',
    alsoCalled: [],
    dispersion: sellmeier([1.03961212, 0.00600069867], [0.231792344, 0.0200179144], [1.01046945, 103.560653]),
    range: [0.3e-6, 2.5e-6],
    indexSpread,
    thermal: catalogue(1.86e-6, 1.31e-8, -1.37e-11, 4.34e-7, 6.27e-10, 0.17),
    source: sheet2017,
    obtained,
  },
  {
    name: 'N-BAK4',
    alsoCalled: [],
    dispersion: sellmeier(
      [1.28834642, 0.00779980626],
      [0.132817724, 0.0315631177],
      [0.945395373, 105.965875],
    ),
    range: [0.334e-6, 2.5e-6],
    indexSpread,
    thermal: catalogue(3.06e-6, 1.44e-8, -2.23e-11, 5.46e-7, 6.05e-10, 0.189),
    source: sheet2017,
    obtained,
  },
  {
    name: 'F2',
    alsoCalled: [],
    dispersion: sellmeier(
      [1.34533359, 0.00997743871],
      [0.209073176, 0.0470450767],
      [0.937357162, 111.886764],
    ),
    range: [0.32e-6, 2.5e-6],
    indexSpread,
    thermal: catalogue(1.51e-6, 1.56e-8, -2.78e-11, 9.34e-7, 1.04e-9, 0.25),
    source: sheet2017,
    obtained,
  },
  {
    name: 'N-SF11',
    alsoCalled: [],
    dispersion: sellmeier([1.73759695, 0.013188707], [0.313747346, 0.0623068142], [1.89878101, 155.23629]),
    range: [0.37e-6, 2.5e-6],
    indexSpread,
    thermal: catalogue(-3.56e-6, 9.2e-9, -2.1e-11, 9.65e-7, 1.44e-9, 0.294),
    source: sheet2017,
    obtained,
  },
  {
    name: 'N-SF6',
    alsoCalled: [],
    dispersion: sellmeier([1.77931763, 0.0133714182], [0.338149866, 0.0617533621], [2.08734474, 174.01759]),
    range: [0.37e-6, 2.5e-6],
    indexSpread,
    thermal: catalogue(-4.93e-6, 7.02e-9, -2.4e-11, 9.84e-7, 1.54e-9, 0.29),
    source: sheet2017,
    obtained,
  },
  {
    name: 'P-SK57Q1',
    alsoCalled: [],
    dispersion: sellmeier([1.30536483, 0.00736408831], [0.171434328, 0.0255786047], [1.10117219, 106.72606]),
    range: [0.31e-6, 2.5e-6],
    indexSpread,
    thermal: null,
    source: `${sheet2017}; a glass for precision moulding`,
    obtained,
  },
  {
    name: 'D-ZK3',
    alsoCalled: [],
    dispersion: sellmeier([1.33936811, 0.00760612309], [0.148690268, 0.0238444644], [1.00954033, 89.0419787]),
    range: [0.302e-6, 2.325e-6],
    indexSpread,
    thermal: catalogue(1.68e-6, 9.68e-9, -2e-11, 5.34e-7, 1.41e-9, 0.172),
    source: "glass maker's catalogue, June 2022 edition, annealed at 4 °C/h; a glass for precision moulding",
    obtained,
  },
];
