import { Refusal } from '../../refusal.ts';
import { type Doubt, determined, type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { type Line, lineThrough } from '../line.ts';
import { alongSlopes } from '../scatter.ts';
import { gaussianLevelRatio, type Level, levelRatioDoubt, levelWords } from './level.ts';

/** Standard uncertainty of a radius read off a ruler, m: half a division of a millimetre (common practice, no source). */
const usualRuler = 0.3e-3;

/** The gauge that reads the cone of light behind a fibre at several distances. */
export const farFieldCone: Gauge = {
  name: 'far-field-cone',
  otherNames: [],
  title: 'far-field cone',
  answers: 'numerical aperture at the level read, and where the fibre’s end stands on the scale',
  needs: 'a card with a ruler, or a camera, at two or better six distances behind the fibre',
  takes: 'table',
  columns: [
    {
      name: 'reading z',
      dimension: 'length',
      needed: true,
      otherNames: ['z', 'distance', 'position', 'reading', 'stage', 'screen', 'card'],
      what: 'where the card stands, on any scale along the axis',
    },
    {
      name: 'radius',
      dimension: 'length',
      needed: false,
      otherNames: ['r', 'radii', 'spot radius', 'w'],
      what: 'of the spot, at the level',
    },
    {
      name: 'diameter',
      dimension: 'length',
      needed: false,
      otherNames: ['d', 'spot diameter', 'width', 'diameters'],
      what: 'of the spot, instead of the radius',
    },
  ],
  settings: [
    {
      name: 'level',
      dimension: 'word',
      words: levelWords,
      needed: true,
      what: 'share of the peak at which the edge was read',
    },
    {
      name: 'radius uncertainty',
      dimension: 'length',
      example: '0.2 mm',
      needed: false,
      what: 'standard uncertainty of one radius; used where there are only two',
    },
  ],
  measure: measureCone,
};

function measureCone({ columns, settings, words }: Readings): GaugeResult {
  const z = columns['reading z'] ?? [];
  const radii = columns.radius ?? columns.diameter?.map((d) => d / 2);
  const level = words.level as Level;
  if (radii === undefined || z.length < 2) {
    throw new Refusal({
      where: 'far-field-cone readings',
      what: radii === undefined ? 'there is no column of radii or diameters' : 'there is only one reading',
      mend: 'Give `reading z (mm)` and `radius (mm)` at two distances or more.',
    });
  }
  const line = lineThrough(z, radii, settings['radius uncertainty']?.value ?? usualRuler);
  if (line === null || line.slope === 0) {
    const names = ['na1e2', 'na5percent', 'endFaceAtReadingZ_m'];
    return {
      answers: names.map((name) => undetermined(name, sameDistance.because, sameDistance.add)),
      remarks: [],
      curves: [],
    };
  }
  return {
    answers: answersOf(line, level),
    remarks:
      line.freedom === 0
        ? ['Two radii show no scatter; each is taken to be good to 0.3 mm, or as stated.']
        : [],
    curves: [
      {
        title: 'radius of the cone',
        across: 'reading (m)',
        up: 'radius (m)',
        x: z,
        readings: radii,
        fit: line.curve,
      },
    ],
  };
}

const sameDistance = {
  because: 'the cone does not widen over these readings',
  add: 'Read the radius at distances from one to several centimetres.',
};

function answersOf(line: Line, level: Level): readonly GaugeAnswer[] {
  const slope = Math.abs(line.slope);
  const doubt = Math.sqrt(line.covariance[1]![1]!);
  const freedom = line.doubtFreedom;
  const from = line.freedom > 0 ? 'scatter of the radii' : 'reading of one radius, as stated or assumed';
  const names = { '1/e2': 'na1e2', '5%': 'na5percent' } as const;
  const other: Level = level === '1/e2' ? '5%' : '1/e2';
  const endName = 'endFaceAtReadingZ_m';
  if (!(doubt < 0.25 * slope)) {
    const [because, add] = [
      'the radii scatter too much for an angle',
      'Read at more distances, and farther apart.',
    ];
    return [names[level], names[other], endName].map((name) => undetermined(name, because, add));
  }
  const numericalAperture = slope / Math.hypot(1, slope);
  const scatter: Doubt = { from, uncertainty: doubt / Math.hypot(1, slope) ** 3, freedom };
  const weak =
    line.freedom < 3
      ? { because: 'there are few distances to judge by', add: 'Read at six distances or more.' }
      : undefined;
  const factor = other === '5%' ? gaussianLevelRatio : 1 / gaussianLevelRatio;
  const converted = numericalAperture * factor;
  const end = -line.offset / line.slope;
  return [
    determined({
      quantity: names[level],
      value: numericalAperture,
      doubts: [scatter],
      shape: 'positive',
      weak,
    }),
    determined({
      quantity: names[other],
      value: converted,
      doubts: [
        { ...scatter, uncertainty: scatter.uncertainty * factor },
        { from: 'shape of the far field, taken as Gaussian', uncertainty: converted * levelRatioDoubt },
      ],
      shape: 'positive',
      weak: {
        because: `the edge was read at ${level === '5%' ? '5 %' : '1/e²'}, and this is converted as for a Gaussian`,
        add: `Read the edge at ${other === '5%' ? '5 %' : '1/e²'} of the peak.`,
      },
    }),
    determined({
      quantity: endName,
      value: end,
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
