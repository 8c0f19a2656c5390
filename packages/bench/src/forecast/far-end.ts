import {
  acrylicMixing,
  beamFromFibre,
  beamRadiusAt,
  bestGaussian,
  farFieldSine,
  fullDivergence,
  type GaussianBeam,
  guidedRays,
  type ModeSet,
  mixedAngleSquared,
  modeFieldRadius,
  momentsOf,
  raySample,
  secondMoments,
} from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import { outputTipDistance } from './budget.ts';
import { asStated } from './draw.ts';
import { beamAt } from './meeting.ts';
import type { StatedBench } from './stated-bench.ts';
import { focalLengthFor } from './way-to-the-facet.ts';

/** The light that leaves: 1/e² radius and half angle at the bare end. */
export interface EndLight {
  readonly radius: number;
  readonly halfAngle: number;
  readonly shape: 'mode' | 'second moments';
}

/** What must be known of a bench to say what leaves it. */
export type LitBench = Pick<StatedBench, 'meeting' | 'taker' | 'budget'>;

/** Below this many modes a mixture is described mode by mode. */
const fewModes = 60;

/**
 * What leaves the bare end at the stated values.
 *
 * @param mixing of a plastic fibre's modes, rad²/m
 */
export function endLight(launch: Launch, bench: LitBench, mixing: number = acrylicMixing.expected): EndLight {
  const light = unmixedLight(launch, bench);
  const { material, profile, length } = launch.fibre;
  // silica keeps the angle over any bench; how a parabola of plastic mixes nobody has told
  if (material !== 'acrylic' || profile !== 'step' || light.shape === 'mode') return light;
  const { numericalAperture, index } = bench.meeting;
  const meanSquare = (of: number): number => Math.sin(of) ** 2 / (2 * numericalAperture ** 2);
  const mixed = mixedAngleSquared(meanSquare(light.halfAngle), {
    numericalAperture,
    index,
    length: length.value,
    mixing,
  });
  return { ...light, halfAngle: Math.asin(Math.min(1, numericalAperture * Math.sqrt(2 * mixed))) };
}

function unmixedLight(launch: Launch, bench: LitBench): EndLight {
  const { meeting, taker, budget } = bench;
  const { coreRadius, wavelength, numericalAperture } = meeting;
  if (taker.set !== null && taker.set.modes.length === 1) {
    const mode = taker.set.modes[0]!;
    return {
      radius: modeFieldRadius(mode, 'near-field') * coreRadius,
      halfAngle: Math.asin(Math.min(1, farFieldSine(mode, Math.exp(-2), coreRadius, wavelength))),
      shape: 'mode',
    };
  }
  const powers = budget.powersOut;
  const mixture =
    taker.set === null || powers === null ? null : mixtureOf(taker.set, powers, coreRadius, wavelength);
  // modes of a parabola of much the same angle are as wide as one another: mixing them changes nothing
  if (mixture !== null && (mixture.modes <= fewModes || launch.fibre.profile === 'graded'))
    return { ...mixture.light, shape: 'second moments' };
  const beam = beamAt(meeting, budget.distance, meeting.aim);
  const rays = guidedRays(
    momentsOf(beam, (2 * Math.PI) / wavelength),
    coreRadius,
    numericalAperture,
    launch.fibre.profile,
    raySample(4096, 11),
  );
  const spreading = (narrowest: number, sine: number): number =>
    Math.asin(Math.min(1, Math.max(sine, narrowest)));
  if (launch.fibre.profile === 'step') {
    // modes of much the same angle mix and fill the core between them, all but LP01, which has no other beside it
    const alone = mixture?.fundamental ?? { share: 0, radius: coreRadius };
    return {
      // 4σ of an evenly filled disc is its diameter
      radius: Math.sqrt(alone.share * alone.radius ** 2 + (1 - alone.share) * coreRadius ** 2),
      // rays keep their angle; what the edge of the core does to a spot wider than it only modes know
      halfAngle:
        mixture?.light.halfAngle ??
        spreading(
          narrowestOfAStep(coreRadius, wavelength),
          Math.sqrt(2 * rays.meanAngleSquared) * numericalAperture,
        ),
      shape: 'second moments',
    };
  }
  // in a parabola (r/a)² and (θ/NA)² trade places, and each has half of their sum in the mean
  const half = (rays.meanRadiusSquared + rays.meanAngleSquared) / 2;
  // LP01 of a parabola, w² = λa/(πNA), is the narrowest of its modes
  const narrowest = Math.sqrt((wavelength * coreRadius) / (Math.PI * numericalAperture));
  const radius = Math.max(narrowest, Math.sqrt(2 * half) * coreRadius);
  return {
    radius,
    halfAngle: spreading(wavelength / (Math.PI * narrowest), Math.sqrt(2 * half) * numericalAperture),
    shape: 'second moments',
  };
}

/** u of LP01 far above its cut-off: the first zero of J₀ (from memory). */
const leastU = 2.4048;

/** The sine of LP01's half angle by second moments where V is large: no mode is narrower. */
const narrowestOfAStep = (coreRadius: number, wavelength: number): number =>
  (Math.SQRT2 * leastU * wavelength) / (2 * Math.PI * coreRadius);

/** Light of modes that share it: what it is together, and LP01's part. */
interface Mixture {
  /** Guided in all. */
  readonly modes: number;
  /** 1/e² radius and half angle, by second moments. */
  readonly light: Pick<EndLight, 'radius' | 'halfAngle'>;
  readonly fundamental: { readonly share: number; readonly radius: number };
}

/** A mode with less than this share of the light changes no digit that is shown. */
const leastShare = 1e-7;

/** Null where no mode has any light, and there are too many to say that all have as much. */
function mixtureOf(
  set: ModeSet,
  powers: Float64Array,
  coreRadius: number,
  wavelength: number,
): Mixture | null {
  const sum = powers.reduce((some, power) => some + power, 0);
  if (sum === 0)
    return powers.length > fewModes
      ? null
      : mixtureOf(set, new Float64Array(powers.length).fill(1), coreRadius, wavelength);
  let total = 0;
  let near = 0;
  let far = 0;
  let fundamental: Mixture['fundamental'] = { share: 0, radius: coreRadius };
  set.modes.forEach((mode, i) => {
    const share = powers[i]! / sum;
    if (share < leastShare) return;
    const { radiusSquared, spectrumSquared } = secondMoments(mode);
    total += share;
    near += share * radiusSquared;
    far += share * spectrumSquared;
    if (mode.l === 0 && mode.m === 1) fundamental = { share, radius: radiusOf(radiusSquared) };
  });
  function radiusOf(meanSquare: number): number {
    return Math.sqrt(2 * meanSquare) * coreRadius;
  }
  return {
    modes: powers.length,
    light: {
      radius: radiusOf(near / total),
      halfAngle: Math.asin(
        Math.min(1, (Math.sqrt((2 * far) / total) * wavelength) / (2 * Math.PI * coreRadius)),
      ),
    },
    fundamental,
  };
}

/** The beam that leaves, from the bare end or from the output lens on; the mixture of many modes as one beam of its M². */
export function beamBehindTheFarEnd(launch: Launch, bench: LitBench): GaussianBeam {
  return beamOf(launch, bench, endLight(launch, bench)).beam;
}

function beamOf(
  launch: Launch,
  { meeting: { wavelength } }: LitBench,
  { radius, halfAngle }: EndLight,
): { readonly beam: GaussianBeam; readonly bare: boolean } {
  // radius times angle says how many times worse than a Gaussian the light is
  const quality = Math.max(1, (Math.PI * radius * Math.tan(halfAngle)) / wavelength);
  const modeRadius = quality === 1 ? wavelength / (Math.PI * Math.tan(halfAngle)) : radius;
  const tipDistance = outputTipDistance(launch, wavelength, asStated);
  if (launch.output === null || tipDistance === null) {
    return { beam: { wavelength, waistRadius: modeRadius, waistPosition: 0, quality }, bare: true };
  }
  const focalLength = focalLengthFor(launch.output.collimator, wavelength, asStated);
  return { beam: beamFromFibre({ wavelength, modeRadius, quality, focalLength, tipDistance }), bare: false };
}

/** The beam that leaves: 1/e² diameter at the bare end or the output lens, and full divergence. */
export function outputBeam(
  launch: Launch,
  bench: LitBench,
): { readonly diameter: number; readonly fullDivergence: number; readonly shape: EndLight['shape'] } {
  const end = endLight(launch, bench);
  const { beam, bare } = beamOf(launch, bench, end);
  if (bare) return { diameter: 2 * end.radius, fullDivergence: 2 * end.halfAngle, shape: end.shape };
  return { diameter: 2 * beamRadiusAt(beam, 0), fullDivergence: fullDivergence(beam), shape: end.shape };
}

/** 1/e² diameter of the Gaussian that fits LP01 best, and Petermann II's mode-field diameter, m. */
export function modeFields(bench: StatedBench): {
  readonly best: number | null;
  readonly petermann2: number | null;
} {
  const mode = bench.taker.fundamentalSet?.modes[0];
  if (mode === undefined) return { best: null, petermann2: null };
  const { coreRadius } = bench.meeting;
  return {
    best: 2 * bestGaussian(mode).radius * coreRadius,
    petermann2: 2 * modeFieldRadius(mode, 'petermann-2') * coreRadius,
  };
}
