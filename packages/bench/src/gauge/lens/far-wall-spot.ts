import { levenbergMarquardt, usualFitLimits } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { type GaugeAnswer, undetermined } from '../answer.ts';
import { blockMeans } from '../block-means.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { column, derived, type Known, settingAs } from '../known.ts';
import { reverseLight } from './reverse-light.ts';

/** Standard uncertainty of a diameter at a wall, m (common practice, no source). */
const usualRuler = 0.5e-3;

/** The gauge that finds a collimator's focal length from light sent backwards. */
export const farWallSpot: Gauge = {
  name: 'far-wall-spot',
  otherNames: [],
  title: 'spot at the far wall',
  answers: 'focal length of a collimator, from light sent backwards through the fibre',
  needs:
    'a reference source in the fibre’s far end, the lens set so that its light stays narrow, and a ruler at two distances',
  takes: 'table',
  columns: [
    {
      name: 'distance',
      dimension: 'length',
      needed: true,
      otherNames: ['z', 'wall', 'position'],
      what: 'from the lens to the spot',
    },
    {
      name: 'diameter',
      dimension: 'length',
      needed: true,
      otherNames: ['d', 'spot', 'spot diameter'],
      what: 'of the spot, 1/e² of intensity',
    },
  ],
  settings: [
    ...reverseLight,
    {
      name: 'focal length about',
      dimension: 'length',
      needed: false,
      what: 'to tell two possible answers apart',
    },
    {
      name: 'diameter uncertainty',
      dimension: 'length',
      example: '0.5 mm',
      needed: false,
      what: 'standard uncertainty of one diameter; left out: 0.5 mm',
    },
  ],
  measure: measureFarWall,
};

/**
 * 1/e² radius of collimated light at a distance from the lens; the fibre's end stands in the focus, so the waist lies one
 * focal length before the lens.
 *
 * @source H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966) (from memory)
 */
export function radiusAtWall(
  distance: number,
  focalLength: number,
  wavelength: number,
  modeRadius: number,
): number {
  const waist = (wavelength * focalLength) / (Math.PI * modeRadius);
  const spread = modeRadius * (distance / focalLength - 1);
  return Math.sqrt(waist * waist + spread * spread);
}

/** ∂radius/∂(logarithm of the focal length), m. @source elementary: the slope of `radiusAtWall` */
function slopeAtWall(distance: number, focalLength: number, wavelength: number, modeRadius: number): number {
  const waist = (wavelength * focalLength) / (Math.PI * modeRadius);
  const lengths = distance / focalLength;
  const radius = radiusAtWall(distance, focalLength, wavelength, modeRadius);
  return (waist * waist - modeRadius * modeRadius * (lengths - 1) * lengths) / radius;
}

function measureFarWall(readings: Readings): GaugeResult {
  const { settings } = readings;
  const distances = column(readings, 'distance');
  const diameters = column(readings, 'diameter');
  const [wavelength, mode] = [settings.wavelength!, settings['mode field diameter']!];
  if (diameters.some((d) => !(d > 0)) || distances.some((d) => !(d > 0))) {
    throw new Refusal({
      where: 'far-wall-spot readings',
      what: 'a distance or a diameter is not above zero',
      mend: 'Measure from the lens.',
    });
  }
  const about = settings['focal length about']?.value ?? null;
  const stated = settings['diameter uncertainty']?.value ?? usualRuler;
  const found = ifSure(bestOf(distances, diameters, wavelength.value, mode.value / 2, stated, about));
  if (typeof found === 'string') return { answers: [none(found)], remarks: [], curves: [] };
  const inputs: readonly Known[] = [
    found,
    settingAs('mode field diameter', mode, 0.03 * mode.value),
    settingAs('wavelength', wavelength, 0),
  ];
  // how far the answer follows its inputs, means of neighbours tell as well as all readings
  const means = blockMeans(distances, diameters) ?? { x: distances, y: diameters };
  const [z0, d0] = [means.x, means.y];
  const again = (of: number, lambda: number): number =>
    (found.value * fitFrom(found.value, z0, d0, lambda, of / 2, stated).value) /
    fitFrom(found.value, z0, d0, wavelength.value, mode.value / 2, stated).value;
  return {
    answers: [
      derived({ quantity: 'focalLength_m', shape: 'positive' }, inputs, (f, of, lambda) =>
        of === mode.value && lambda === wavelength.value ? f! : again(of!, lambda!),
      ),
    ],
    remarks: [],
    curves: [
      {
        title: 'diameter along the beam',
        across: 'distance from the lens (m)',
        up: 'diameter (m)',
        x: distances,
        readings: diameters,
        fit: distances.map((z) => 2 * radiusAtWall(z, found.value, wavelength.value, mode.value / 2)),
      },
    ],
  };
}

/** A doubt of more than this share is no figure, and what follows from its slopes no interval. */
const mostDoubt = 0.5;

/** Where a spot is about as small as it can be, its size hardly moves with the focal length. */
const ifSure = (found: Candidate | string): Candidate | string =>
  typeof found === 'string' || found.uncertainty < mostDoubt * found.value
    ? found
    : 'the spot is as small there as it can be, which many focal lengths make it';

const none = (because: string): GaugeAnswer =>
  undetermined(
    'focalLength_m',
    because,
    'Measure the spot at a second distance, several metres away, or say `focal length about`.',
  );

interface Candidate extends Known {
  readonly squares: number;
}

/** A small spot comes from a short lens that spreads or from a long one that does not: both are tried. */
function bestOf(
  distances: readonly number[],
  diameters: readonly number[],
  wavelength: number,
  modeRadius: number,
  stated: number,
  about: number | null,
): Candidate | string {
  const radius = Math.max(...diameters) / 2;
  const far = Math.max(...distances);
  const starts = [(modeRadius * far) / radius, (Math.PI * modeRadius * radius) / wavelength];
  const [a, b] = starts.map((start) =>
    fitFrom(start, distances, diameters, wavelength, modeRadius, stated),
  ) as [Candidate, Candidate];
  const twins = Math.abs(Math.log(a.value / b.value)) < 0.02;
  if (twins) return a.squares < b.squares ? a : b;
  if (about !== null)
    return Math.abs(Math.log(a.value / about)) < Math.abs(Math.log(b.value / about)) ? a : b;
  const [better, worse] = a.squares < b.squares ? [a, b] : [b, a];
  // one of the two must be nine times less likely by the stated reading, or the readings do not decide
  if (distances.length > 1 && worse.squares - better.squares > 4.5 * stated ** 2) return better;
  return `the diameters go with ${mm(a.value)} as well as with ${mm(b.value)}`;
}

const mm = (value: number): string => `${(value * 1e3).toPrecision(2)} mm`;

function fitFrom(
  start: number,
  distances: readonly number[],
  diameters: readonly number[],
  wavelength: number,
  modeRadius: number,
  stated: number,
): Candidate {
  const residuals = ([logF]: readonly number[]): readonly number[] =>
    distances.map((z, i) => 2 * radiusAtWall(z, Math.exp(logF!), wavelength, modeRadius) - diameters[i]!);
  const slopesOf = ([logF]: readonly number[]): readonly (readonly number[])[] => [
    distances.map((z) => 2 * slopeAtWall(z, Math.exp(logF!), wavelength, modeRadius)),
  ];
  const means = blockMeans(distances, diameters);
  const near =
    means === null ? start : fitFrom(start, means.x, means.y, wavelength, modeRadius, stated).value;
  // ten thousand readings leave a doubt of 1e-4 of the focal length at best
  const limits = means === null ? usualFitLimits : { ...usualFitLimits, step: 1e-7 };
  const fit = levenbergMarquardt(residuals, [Math.log(near)], [0.05], limits, slopesOf);
  const value = Math.exp(fit.parameters[0]!);
  const freedom = distances.length - 1;
  const bySpread = freedom >= 3;
  const scatter = bySpread ? fit.squares / freedom : stated ** 2;
  const uncertainty = value * Math.sqrt(scatter * (fit.inverse?.[0]?.[0] ?? 1));
  return {
    from: bySpread ? 'scatter of the diameters' : 'reading of a diameter, as stated or assumed',
    value,
    uncertainty,
    squares: fit.squares,
    ...(bySpread ? { freedom } : {}),
  };
}
