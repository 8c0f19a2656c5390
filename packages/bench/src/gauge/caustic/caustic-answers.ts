import { type Doubt, determined, type GaugeAnswer, undetermined } from '../answer.ts';
import type { CausticFit } from './fit-caustic.ts';

/** What is known of the diameters along one transverse axis of a beam, beside their fit. */
export interface CausticReadings {
  /** Where they were read, m. */
  readonly z: readonly number[];
  /** m, vacuum; null where nobody said: then there is no M². */
  readonly wavelength: { readonly value: number; readonly uncertainty: number } | null;
  /** Standard uncertainty of the scale all diameters share, as a share: of a pixel pitch for instance. */
  readonly scale: number;
}

interface Lack {
  readonly because: string;
  readonly add: string;
}

/** What the places of the readings allow to be said. */
interface Reach {
  readonly waist: Lack | null;
  readonly divergence: Lack | null;
  readonly product: Lack | null;
  readonly weak: Lack | undefined;
}

const names = ['waistDiameter_m', 'waistPosition_m', 'fullDivergence_rad', 'rayleighLength_m', 'm2'] as const;

/**
 * Waist, position, divergence and M² of one axis, or why the places of the readings cannot give them.
 *
 * @param fit of the diameters of this axis; null where their places do not tell the unknowns apart
 */
export function causticAnswers(
  readings: CausticReadings,
  fit: CausticFit | null,
  axis = '',
): readonly GaugeAnswer[] {
  const prefix = axis === '' ? '' : `${axis}.`;
  const none = ({ because, add }: Lack, which: readonly string[] = names): readonly GaugeAnswer[] =>
    which.map((name) => undetermined(`${prefix}${name}`, because, add));
  if (fit === null) return none(samePlaces);
  if (fit.waist === null || fit.doubts === null) return coneAlone(fit, prefix);
  const { waist, doubts, freedom, doubtFreedom } = fit;
  const reach = reachOf(readings, fit);
  const answer = (
    name: string,
    lack: Lack | null,
    value: number,
    uncertainty: number,
    more: readonly Doubt[],
    limits: { readonly shape?: 'positive'; readonly floor?: number } = {},
  ): GaugeAnswer => {
    const quantity = `${prefix}${name}`;
    if (lack !== null) return undetermined(quantity, lack.because, lack.add);
    const scatter: Doubt =
      freedom > 0
        ? { from: 'scatter of the diameters', uncertainty, freedom: doubtFreedom }
        : { from: 'reading of one diameter, as stated or assumed', uncertainty };
    return determined({ quantity, value, doubts: [scatter, ...more], weak: reach.weak, ...limits });
  };
  // a diameter read too small counts too much: of a squared diameter this takes four times the square of the scatter
  const weighting = (value: number, times: number): Doubt => ({
    from: 'weights taken from the diameters themselves',
    uncertainty: freedom > 0 ? times * fit.scatter ** 2 * value : 0,
  });
  const scale = (value: number): Doubt => ({
    from: 'scale of the diameters',
    uncertainty: value * readings.scale,
  });
  return [
    answer(
      'waistDiameter_m',
      reach.waist,
      waist.waistDiameter,
      doubts.waistDiameter,
      [scale(waist.waistDiameter), weighting(waist.waistDiameter, 2)],
      { shape: 'positive' },
    ),
    answer(
      'waistPosition_m',
      reach.divergence === null || reach.waist === null ? null : reach.waist,
      waist.waistPosition,
      doubts.waistPosition,
      [{ from: 'drift of the scale from reading to reading', uncertainty: fit.driftDoubt }],
    ),
    answer(
      'fullDivergence_rad',
      reach.divergence,
      waist.fullDivergence,
      doubts.fullDivergence,
      [scale(waist.fullDivergence), weighting(waist.fullDivergence, 2)],
      { shape: 'positive' },
    ),
    answer('rayleighLength_m', reach.product, waist.rayleighRange, doubts.rayleighRange, [], {
      shape: 'positive',
    }),
    quality(),
  ];

  function quality(): GaugeAnswer {
    const { wavelength } = readings;
    if (wavelength === null && reach.product === null) {
      return undetermined(`${prefix}m2`, 'M² needs the wavelength', 'Give the wavelength of the laser.');
    }
    const of = (length: number): number => (Math.PI * waist.parameterProduct) / length;
    const value = of(wavelength?.value ?? 1);
    const more = [
      scale(2 * value),
      weighting(value, 4),
      {
        from: 'wavelength',
        uncertainty: (value * (wavelength?.uncertainty ?? 0)) / (wavelength?.value ?? 1),
      },
    ];
    const relative = doubts.parameterProduct / waist.parameterProduct;
    return answer('m2', reach.product, value, value * relative, more, { shape: 'positive', floor: 1 });
  }
}

/** Diameters that widen like a cone, but show no waist: their angle can be told. */
function coneAlone({ cone, freedom }: CausticFit, prefix: string): readonly GaugeAnswer[] {
  const without = (name: string): GaugeAnswer =>
    undetermined(`${prefix}${name}`, noWaist.because, noWaist.add);
  if (cone === null || freedom === 0 || !(cone.divergenceDoubt < 0.15 * cone.fullDivergence))
    return names.map(without);
  const from = 'scatter of the diameters';
  const told: Readonly<Record<string, GaugeAnswer>> = {
    waistPosition_m: determined({
      quantity: `${prefix}waistPosition_m`,
      value: cone.source,
      doubts: [{ from, uncertainty: cone.sourceDoubt, freedom }],
      weak: noWaist,
    }),
    fullDivergence_rad: determined({
      quantity: `${prefix}fullDivergence_rad`,
      value: cone.fullDivergence,
      doubts: [{ from, uncertainty: cone.divergenceDoubt, freedom }],
      shape: 'positive',
      weak: noWaist,
    }),
  };
  return names.map((name) => told[name] ?? without(name));
}

const samePlaces: Lack = {
  because: 'the diameters were read at fewer than three different places',
  add: 'Read the diameter at ten places, five of them about the waist and five far from it.',
};

const noWaist: Lack = {
  because: 'no beam narrows as these diameters do: their scatter hides the waist',
  add: 'Read the diameter at five places about the waist and at five beyond two Rayleigh lengths from it.',
};

/**
 * A waist beyond the readings is told only if its doubt is below this share: of one that is guessed, a lucky set of
 * readings makes a wide one that looks sure.
 */
const mostGuessed = 0.1;

/** Nineteen of twenty are above so many standard uncertainties below (normal law). */
const sure = 1.645;

/**
 * Waist and divergence need readings where each rules the diameter: about the waist, and far from it.
 *
 * @source ISO 11146-1:2021, 8: ten places or more, half within one Rayleigh length of the waist, half beyond two (from
 *   memory); where it is given up, 1 and 1.5 Rayleigh lengths, is ours
 */
function reachOf({ z }: CausticReadings, { waist, doubts, freedom }: CausticFit): Reach {
  const { waistPosition, rayleighRange } = waist!;
  const away = z.map((at) => Math.abs(at - waistPosition) / rayleighRange);
  const seen = z.some((at) => at <= waistPosition) && z.some((at) => at >= waistPosition);
  // of a waist beyond the readings, one that looks wide by chance looks near as well
  const surely = seen ? 1 : 1 - sure * (doubts!.rayleighRange / rayleighRange);
  const near = away.filter((distance) => distance <= 1).length;
  const nearest = Math.min(...away);
  const far = away.filter((distance) => distance >= 2).length;
  const fuzzy = doubts!.parameterProduct / waist!.parameterProduct > 0.25;
  const farOnly: Lack = {
    because: 'no diameter was read within a Rayleigh length of the waist',
    add: `Read five more within ${length(rayleighRange)} of ${length(waistPosition)}.`,
  };
  const nearOnly: Lack = {
    because: 'every diameter was read near the waist, where divergence hardly shows',
    add: `Read five more beyond ${length(2 * rayleighRange)} from ${length(waistPosition)}, or focus the beam with a lens first.`,
  };
  const scattered: Lack = {
    because: 'the diameters scatter too much for the product of waist and divergence',
    add: 'Read each diameter several times, and at more places on both sides of the waist.',
  };
  const lackNear = nearest > surely ? farOnly : null;
  const lackFar = Math.max(...away) < 1.5 ? nearOnly : null;
  const lackSure = fuzzy ? scattered : null;
  const guessed = !seen && doubts!.waistDiameter > mostGuessed * waist!.waistDiameter;
  const lackWaist =
    lackNear ??
    (guessed || (fuzzy && (!seen || doubts!.waistDiameter > 0.25 * waist!.waistDiameter)) ? scattered : null);
  const lackDivergence =
    lackFar ?? (fuzzy && doubts!.fullDivergence > 0.25 * waist!.fullDivergence ? scattered : null);
  const enough = freedom >= 7 && near >= 0.3 * z.length && far >= 0.3 * z.length;
  return {
    waist: lackWaist,
    divergence: lackDivergence,
    product: lackNear ?? lackFar ?? (guessed ? scattered : lackSure),
    weak: enough ? undefined : fewPlaces(z.length, near, far),
  };
}

function fewPlaces(all: number, near: number, far: number): Lack {
  return {
    because: `of ${all} places ${near} lie within one Rayleigh length of the waist and ${far} beyond two`,
    add: 'Read at ten places or more: half within one Rayleigh length, half beyond two.',
  };
}

/** For a sentence. */
function length(value: number): string {
  const size = Math.abs(value);
  return size >= 1
    ? `${value.toPrecision(3)} m`
    : size >= 1e-3
      ? `${(value * 1e3).toPrecision(3)} mm`
      : `${(value * 1e6).toPrecision(3)} µm`;
}
