import { isUnclipped } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { column, derived, type Known } from '../known.ts';
import { lastDigit } from '../last-digit.ts';
import { lineThrough } from '../line.ts';

/** The gauge that shows a camera known levels of light. */
export const cameraLinearity: Gauge = {
  name: 'camera-linearity',
  otherNames: ['camera'],
  title: 'camera linearity',
  answers:
    'exponent of the camera’s code against light: 1 is in proportion, about 0.45 is a picture for screens',
  needs: 'two known levels or more (a neutral filter, two polarisers, distances), exposure and gain locked',
  takes: 'table',
  columns: [
    {
      name: 'light',
      dimension: 'reading',
      needed: true,
      otherNames: ['level', 'power', 'known'],
      what: 'known level; only ratios count',
    },
    {
      name: 'code',
      dimension: 'number',
      needed: true,
      otherNames: ['codes', 'value', 'grey value', 'pixel value', 'mean'],
      what: 'mean code of the same patch',
    },
  ],
  settings: [
    {
      name: 'dark code',
      dimension: 'number',
      example: '3',
      needed: false,
      otherNames: ['dark', 'background'],
      what: 'with the lens covered; left out: 0',
    },
    {
      name: 'clip code',
      dimension: 'number',
      example: '250',
      needed: false,
      otherNames: ['clip'],
      what: 'from which the camera no longer counts; left out: 250',
    },
    {
      name: 'level uncertainty',
      dimension: 'fraction',
      needed: false,
      what: 'standard uncertainty of one level, as a share; left out: 5 %',
    },
  ],
  measure: measureCamera,
};

function measureCamera(readings: Readings): GaugeResult {
  const { settings } = readings;
  const light = column(readings, 'light');
  const codes = column(readings, 'code');
  const dark = settings['dark code']?.value ?? 0;
  const clip = settings['clip code']?.value ?? 250;
  if (light.length < 2 || light.some((level) => !(level > 0)) || codes.some((code) => !(code > dark))) {
    throw new Refusal({
      where: 'camera-linearity readings',
      what: 'there are no two levels whose codes are above the dark',
      mend: 'Give two levels of light above zero or more, each with its mean code.',
    });
  }
  if (!isUnclipped(codes, clip)) {
    return plain(
      undetermined(
        'exponent',
        `a code is at or above ${clip}: what lies above is cut off`,
        'Expose shorter, and take all levels again.',
      ),
    );
  }
  const stated = settings['level uncertainty']?.value ?? 0.05;
  const [x, y] = [light.map(Math.log), codes.map((code) => Math.log(code - dark))];
  // the doubt is in the levels; the slope is near enough to one to carry it over
  const line = lineThrough(x, y, stated);
  if (line === null || Math.max(...light) < 1.3 * Math.min(...light)) {
    return plain(
      undetermined(
        'exponent',
        'the levels are too much alike',
        'Choose levels that differ by a factor of two or more.',
      ),
    );
  }
  const bySpread = line.freedom >= 3;
  const mean = x.reduce((sum, v) => sum + v, 0) / x.length;
  const spread = x.reduce((sum, v) => sum + (v - mean) ** 2, 0);
  const slope: Known = bySpread
    ? {
        from: 'scatter of the codes',
        value: line.slope,
        uncertainty: Math.sqrt(line.covariance[1]![1]!),
        freedom: line.doubtFreedom,
      }
    : {
        from: 'levels, as stated or assumed',
        value: line.slope,
        uncertainty: (stated * Math.abs(line.slope)) / Math.sqrt(spread),
      };
  // a low code is rounded by a large share of itself: what that moves the slope, reading by reading
  const step = lastDigit(codes) / Math.sqrt(12);
  const byDigit = Math.hypot(...codes.map((code, i) => ((x[i]! - mean) / spread) * (step / (code - dark))));
  const digit: Known = { from: 'last digit of the codes', value: 0, uncertainty: byDigit };
  const answer = derived({ quantity: 'exponent', shape: 'positive' }, [slope, digit], (s, d) => s! + d!);
  const isLinear = answer.low! <= 1 && answer.high! >= 1;
  return {
    ...plain(answer),
    remarks: [
      isLinear
        ? 'The codes follow the light in proportion, as far as these levels tell.'
        : 'The codes do not follow the light in proportion: decode them before summing, or take the raw picture.',
    ],
    curves: [
      {
        title: 'code against light',
        across: 'ln of the light',
        up: 'ln of the code',
        x,
        readings: y,
        fit: line.curve,
      },
    ],
  };
}

const plain = (...answers: GaugeResult['answers']): GaugeResult => ({ answers, remarks: [], curves: [] });
