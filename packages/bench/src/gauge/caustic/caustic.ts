import { Refusal } from '../../refusal.ts';
import { between } from '../curve-drawing.ts';
import type { Gauge, GaugeCurve, GaugeResult, Readings } from '../gauge.ts';
import { causticAnswers } from './caustic-answers.ts';
import { type CausticFit, fitCaustic } from './fit-caustic.ts';

/** Standard uncertainty of one diameter where three readings leave nothing to judge it by (common practice, no source). */
const usualRelative = 0.03;

/** The gauge that follows a beam through its waist. */
export const caustic: Gauge = {
  name: 'caustic',
  otherNames: ['iso-caustic'],
  title: 'caustic',
  answers: 'waist diameter and position, full divergence and M², for each axis apart',
  needs:
    'second-moment diameters at ten places, half within one Rayleigh length of the waist, half beyond two',
  takes: 'table',
  columns: [
    {
      name: 'position',
      dimension: 'length',
      needed: true,
      otherNames: ['z', 'distance', 'positions', 'place'],
      what: 'where along the beam, positive downstream',
    },
    {
      name: 'diameter',
      dimension: 'length',
      needed: false,
      otherNames: ['d', 'd4sigma', 'diameters', 'width', 'beam diameter', 'spot diameter', 'd4σ'],
      what: 'second-moment diameter, 4σ',
    },
    {
      name: 'diameter x',
      dimension: 'length',
      needed: false,
      otherNames: ['dx', 'd x', 'd4sigma x', 'width x', 'x diameter', 'horizontal diameter', 'horizontal'],
      what: 'the same along x',
    },
    {
      name: 'diameter y',
      dimension: 'length',
      needed: false,
      otherNames: ['dy', 'd y', 'd4sigma y', 'width y', 'y diameter', 'vertical diameter', 'vertical'],
      what: 'the same along y',
    },
    {
      name: 'radius',
      dimension: 'length',
      needed: false,
      otherNames: ['w', 'radii', 'beam radius', 'radius1e2'],
      what: 'half of the diameter, instead of it',
    },
    {
      name: 'radius x',
      dimension: 'length',
      needed: false,
      otherNames: ['wx', 'w x'],
      what: 'the same along x',
    },
    {
      name: 'radius y',
      dimension: 'length',
      needed: false,
      otherNames: ['wy', 'w y'],
      what: 'the same along y',
    },
  ],
  settings: [
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      what: 'of the light, for M²',
      otherNames: ['lambda', 'λ'],
    },
    {
      name: 'diameter uncertainty',
      dimension: 'fraction',
      needed: false,
      what: 'standard uncertainty of one diameter, as a share; used where there are only three',
    },
    {
      name: 'scale uncertainty',
      dimension: 'fraction',
      needed: false,
      what: 'standard uncertainty of the scale that all diameters share, as a share',
    },
  ],
  measure: measureCaustic,
};

function measureCaustic({ columns, settings }: Readings): GaugeResult {
  const z = columns.position ?? [];
  const axes = ['', 'x', 'y'].flatMap((axis) => {
    const end = axis === '' ? '' : ` ${axis}`;
    const diameters = columns[`diameter${end}`] ?? columns[`radius${end}`]?.map((w) => 2 * w);
    return diameters === undefined ? [] : [{ axis, diameters }];
  });
  if (axes.length === 0) {
    throw new Refusal({
      where: 'caustic readings',
      what: 'there is no column of diameters or radii',
      mend: 'Head one `diameter (µm)`, or two `diameter x (µm)` and `diameter y (µm)`.',
    });
  }
  const bad = axes.flatMap(({ diameters }) => diameters).find((d) => !(d > 0));
  if (bad !== undefined) {
    throw new Refusal({
      where: 'caustic readings',
      what: `a diameter of ${bad} m is none`,
      mend: 'Leave out the places where nothing was read.',
    });
  }
  if (z.length < 3) {
    throw new Refusal({
      where: 'caustic readings',
      what: `there are ${z.length} diameters`,
      mend: 'Read at least three, better ten, on both sides of the waist.',
    });
  }
  const { wavelength } = settings;
  const common = {
    z,
    wavelength:
      wavelength === undefined ? null : { value: wavelength.value, uncertainty: wavelength.uncertainty ?? 0 },
    scale: settings['scale uncertainty']?.value ?? 0,
  };
  const relative = settings['diameter uncertainty']?.value ?? usualRelative;
  const fitted = axes.map((one) => ({ ...one, fit: fitCaustic(z, one.diameters, relative) }));
  return {
    answers: fitted.flatMap(({ axis, fit }) => causticAnswers(common, fit, axis)),
    remarks:
      z.length === 3
        ? [
            'Three diameters fix the curve without showing how far they are off; their uncertainty is taken as stated, or 3 %.',
          ]
        : [],
    curves: fitted.map(({ axis, diameters, fit }) => curveOf(axis, z, diameters, fit)),
  };
}

function curveOf(
  axis: string,
  z: readonly number[],
  diameters: readonly number[],
  fit: CausticFit | null,
): GaugeCurve {
  const waist = fit?.waist;
  return {
    title: axis === '' ? 'diameter along the beam' : `diameter along the beam, ${axis}`,
    across: 'position along the beam (m)',
    up: 'second-moment diameter (m)',
    x: z,
    readings: diameters,
    fit: fit?.curve ?? diameters.map(() => Number.NaN),
    ...(waist == null
      ? {}
      : {
          between: between(z, (at) =>
            Math.hypot(waist.waistDiameter, waist.fullDivergence * (at - waist.waistPosition)),
          ),
        }),
  };
}
