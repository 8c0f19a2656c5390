import { Refusal } from '../../refusal.ts';
import { determined, type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings, Setting } from '../gauge.ts';
import { setToWithin } from '../setting-words.ts';
import { fitProfile, type ProfileFit } from './fit-profile.ts';

/** The gauge that reads intensity across the far field of a fibre. */
export const farFieldProfile: Gauge = {
  name: 'far-field-profile',
  otherNames: [],
  title: 'far-field profile',
  answers: 'sin θ at half, 1/e² and 5 % of the peak (the numerical aperture by each definition)',
  needs: 'a small detector, or a line through a picture of a screen, across the whole cone',
  takes: 'table',
  columns: [
    {
      name: 'sin theta',
      dimension: 'number',
      needed: false,
      otherNames: ['sintheta', 'sin θ', 'sine', 'sin(theta)', 'sin'],
      what: 'sine of the angle from the axis',
    },
    {
      name: 'angle',
      dimension: 'angle',
      needed: false,
      otherNames: ['theta', 'θ'],
      what: 'from the axis, instead of its sine',
    },
    {
      name: 'position',
      dimension: 'length',
      needed: false,
      otherNames: ['x', 'place'],
      what: 'on a flat screen, instead of the sine; needs `distance`',
    },
    {
      name: 'intensity',
      dimension: 'reading',
      needed: true,
      otherNames: ['reading', 'signal', 'power', 'voltage', 'i', 'value', 'grey value'],
      what: 'what the detector reads; only ratios count',
    },
  ],
  settings: [
    {
      name: 'distance',
      dimension: 'length',
      example: '100 mm',
      needed: false,
      what: 'from the fibre to the screen',
    },
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      otherNames: ['lambda', 'λ'],
      what: 'for a mode field diameter',
    },
    {
      name: 'background',
      dimension: 'number',
      example: '0.3',
      needed: false,
      otherNames: ['dark'],
      what: 'the reading in the dark, in the unit of the column; left out: from the wings',
    },
  ],
  measure: measureProfile,
};

function measureProfile(readings: Readings): GaugeResult {
  const sines = sinesOf(readings);
  const intensities = readings.columns.intensity ?? [];
  const { wavelength, background } = readings.settings;
  const fit = fitProfile(sines, intensities, background?.value ?? null);
  return {
    answers: answersOf(fit, wavelength),
    remarks: [],
    curves:
      fit === null
        ? []
        : [
            {
              title: 'far field',
              across: 'sin θ',
              up: 'intensity',
              ofDetector: true,
              x: fit.x,
              readings: fit.readings,
              fit: fit.curve,
            },
          ],
  };
}

function sinesOf({ columns, settings }: Readings): readonly number[] {
  const { angle, position } = columns;
  const given = columns['sin theta'];
  if (given !== undefined) return given;
  if (angle !== undefined) return angle.map(Math.sin);
  const { distance } = settings;
  if (position === undefined || distance === undefined || !(distance.value > 0)) {
    throw new Refusal({
      where: 'far-field-profile readings',
      what: 'there is neither a sine, nor an angle, nor a position with the distance to the screen',
      mend: `Head a column \`sin theta\` or \`angle (deg)\`; or head it \`position (mm)\` and ${setToWithin('distance', '50 mm')}.`,
    });
  }
  // the scale's zero need not be the axis: the middle of the light is
  const intensities = columns.intensity ?? [];
  const peak = Math.max(...intensities);
  const lit = position.filter((_, i) => intensities[i]! > peak / 2);
  const axis = (Math.min(...lit) + Math.max(...lit)) / 2;
  return position.map((x) => (x - axis) / Math.hypot(x - axis, distance.value));
}

const shares = [
  ['sin1e2', Math.exp(-2)],
  ['sin5percent', 0.05],
  ['sinHalf', 0.5],
] as const;

/**
 * What eight terms miss of an LP01 far field, as a share of the angle. Against its closed form, V from 1.6 to 4 and 41 to 401
 * readings without noise, it is 1.0e-4 at most, at 5 % (computed); half as much again is taken.
 */
const curveDoubt = 1.5e-4;

const noPeak = {
  because: 'the readings do not rise from the dark to one peak and fall again',
  add: 'Read across the whole cone, from dark to dark, at twenty places or more.',
};

/** A dark known no better than to this share of the peak moves the angle at 5 % of it too far to tell. */
const mostDark = 0.06;

const noDark = {
  because: 'the readings end before the dark, so how much of them is background is not known',
  add: 'Read farther out on both sides, or give the reading in the dark as `background`.',
};

function answersOf(fit: ProfileFit | null, wavelength: Setting | undefined): readonly GaugeAnswer[] {
  const answers = shares.map(([name, share]): GaugeAnswer => {
    const found = fit?.sineAt(share) ?? null;
    if (fit === null) return undetermined(name, noPeak.because, noPeak.add);
    if (fit.darkDoubt > mostDark) return undetermined(name, noDark.because, noDark.add);
    if (found === null || !(found.uncertainty < 0.25 * found.value)) {
      return undetermined(
        name,
        `the readings do not show where the light falls to ${(share * 100).toPrecision(2)} % of its peak`,
        'Read farther out on both sides.',
      );
    }
    return determined({
      quantity: name,
      value: found.value,
      doubts: [
        { from: 'scatter of the readings', uncertainty: found.uncertainty, freedom: fit.freedom },
        { from: 'shape of the curve laid through them', uncertainty: curveDoubt * found.value },
      ],
      shape: 'positive',
    });
  });
  return [...answers, ...equivalentMode(answers[0]!, wavelength)];
}

/**
 * Mode field diameter of the Gaussian that has the same 1/e² angle, 2λ/(π sin θ); of a true mode it is a few per cent
 * less than Petermann's.
 *
 * @source the far field of a Gaussian waist: elementary
 */
function equivalentMode(sine: GaugeAnswer, wavelength: Setting | undefined): readonly GaugeAnswer[] {
  if (wavelength === undefined || sine.value === null || sine.uncertainty === null) return [];
  const value = (2 * wavelength.value) / (Math.PI * sine.value);
  return [
    determined({
      quantity: 'equivalentMfdFrom1e2_m',
      value,
      doubts: [
        ...sine.contributions.map(({ from }) => ({
          from,
          uncertainty: (value * sine.uncertainty!) / sine.value!,
        })),
        { from: 'wavelength', uncertainty: (value * (wavelength.uncertainty ?? 0)) / wavelength.value },
      ],
      shape: 'positive',
    }),
  ];
}
