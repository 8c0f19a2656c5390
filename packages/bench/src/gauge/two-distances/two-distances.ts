import { Refusal } from '../../refusal.ts';
import { determined, type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { type Line, lineThrough } from '../line.ts';
import { alongSlopes } from '../scatter.ts';

/** Standard uncertainty of a diameter read off a ruler, m: half a division of a millimetre (common practice, no source). */
const usualRuler = 0.5e-3;

/** The gauge that measures a spot at two distances, or more. */
export const twoDistances: Gauge = {
  name: 'two-distances',
  otherNames: ['two-distance', 'divergence'],
  title: 'two distances',
  answers: 'full divergence of a beam far from its waist',
  needs: 'a ruler, a card, and two places far enough apart that the spot differs by several millimetres',
  takes: 'table',
  columns: [
    {
      name: 'distance',
      dimension: 'length',
      needed: true,
      otherNames: ['z', 'position', 'place', 'distances'],
      what: 'from the laser, or from any point along the beam',
    },
    {
      name: 'diameter',
      dimension: 'length',
      needed: true,
      otherNames: ['d', 'spot', 'spot diameter', 'width', 'diameters'],
      what: 'of the spot, 1/e² of intensity',
    },
  ],
  settings: [
    {
      name: 'diameter uncertainty',
      dimension: 'length',
      example: '0.5 mm',
      needed: false,
      what: 'standard uncertainty of one diameter; left out: 0.5 mm',
    },
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      otherNames: ['lambda', 'λ'],
      what: 'to check that both places are far from the waist',
    },
  ],
  measure: measureTwoDistances,
};

function measureTwoDistances({ columns, settings }: Readings): GaugeResult {
  const z = columns.distance ?? [];
  const diameters = columns.diameter ?? [];
  if (z.length < 2) {
    throw new Refusal({
      where: 'two-distances readings',
      what: `there are ${z.length} readings`,
      mend: 'Measure the spot at two distances or more.',
    });
  }
  const line = lineThrough(z, diameters, settings['diameter uncertainty']?.value ?? usualRuler);
  return {
    answers: answersOf(line, z, settings.wavelength?.value ?? null),
    remarks:
      line !== null && line.freedom === 0
        ? ['Two diameters show no scatter; each is taken to be good to 0.5 mm, or as stated.']
        : [],
    curves:
      line === null
        ? []
        : [
            {
              title: 'diameter along the beam',
              across: 'distance (m)',
              up: 'diameter (m)',
              x: z,
              readings: diameters,
              fit: line.curve,
            },
          ],
  };
}

function answersOf(
  line: Line | null,
  z: readonly number[],
  wavelength: number | null,
): readonly GaugeAnswer[] {
  const names = ['fullDivergence_rad', 'virtualSource_m'] as const;
  const slope = line === null ? 0 : Math.abs(line.slope);
  const doubt = line === null ? 0 : Math.sqrt(line.covariance[1]![1]!);
  if (line === null || !(doubt < 0.35 * slope)) {
    return names.map((name) =>
      undetermined(
        name,
        'the spot changes by no more than the ruler can tell',
        'Measure at places several times farther apart, or take a caustic behind a lens.',
      ),
    );
  }
  const freedom = line.doubtFreedom;
  const from =
    line.freedom > 0 ? 'scatter of the diameters' : 'reading of one diameter, as stated or assumed';
  const source = -line.offset / line.slope;
  const weak = nearWaist(slope, source, z, wavelength);
  const angle = 2 * Math.atan(slope / 2);
  return [
    determined({
      quantity: names[0],
      value: angle,
      doubts: [{ from, uncertainty: doubt / (1 + (slope / 2) ** 2), freedom }],
      shape: 'positive',
      weak,
    }),
    determined({
      quantity: names[1],
      value: source,
      doubts: [
        {
          from,
          uncertainty: alongSlopes([-1 / line.slope, line.offset / line.slope ** 2], line.covariance),
          freedom,
        },
      ],
      weak,
    }),
  ];
}

/** A beam of M² = 1 has the shortest reach of its waist that this divergence allows: 4λ/(πθ²). */
function nearWaist(
  divergence: number,
  source: number,
  z: readonly number[],
  wavelength: number | null,
): { readonly because: string; readonly add: string } | undefined {
  if (wavelength === null) {
    return {
      because: 'nothing says how far these places are from the waist, where a beam widens less',
      add: 'Give the wavelength, and this is checked.',
    };
  }
  const reach = (4 * wavelength) / (Math.PI * divergence ** 2);
  const nearest = Math.min(...z.map((at) => Math.abs(at - source)));
  if (nearest > 3 * reach) return undefined;
  return {
    because: 'a place lies within three Rayleigh lengths of the waist, where a beam widens less',
    add: `Measure beyond ${(3 * reach).toPrecision(2)} m from it, or take a caustic.`,
  };
}
