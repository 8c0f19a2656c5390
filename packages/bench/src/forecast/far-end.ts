import {
  beamFromFibre,
  beamRadiusAt,
  bestGaussian,
  farFieldSine,
  fullDivergence,
  type GaussianBeam,
  guidedRays,
  type ModeSet,
  modeFieldRadius,
  momentsOf,
  raySample,
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

/** What leaves the bare end at the stated values. */
export function endLight(launch: Launch, bench: LitBench): EndLight {
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
  const { powers } = budget.chain;
  if (taker.set !== null && powers !== null && taker.set.modes.length <= fewModes) {
    return { ...mixtureOf(taker.set, powers, coreRadius, wavelength), shape: 'second moments' };
  }
  // many modes: rays keep their angle, but soon forget where in a step-index core they were
  const beam = beamAt(meeting, budget.distance, meeting.aim);
  const rays = guidedRays(
    momentsOf(beam, (2 * Math.PI) / wavelength),
    coreRadius,
    numericalAperture,
    launch.fibre.profile,
    raySample(4096, 11),
  );
  // where no ray at all is guided, what there is leaves as narrow as diffraction lets it
  const spreading = (radius: number, sine: number): number =>
    Math.asin(Math.min(1, Math.max(sine, wavelength / (Math.PI * radius))));
  if (launch.fibre.profile === 'step') {
    return {
      radius: coreRadius, // 4σ of an evenly filled disc is its diameter
      halfAngle: spreading(coreRadius, Math.sqrt(2 * rays.meanAngleSquared) * numericalAperture),
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
    halfAngle: spreading(narrowest, Math.sqrt(2 * half) * numericalAperture),
    shape: 'second moments',
  };
}

/** 1/e² radius and half angle, by second moments, of modes that share the light. */
function mixtureOf(set: ModeSet, powers: Float64Array, coreRadius: number, wavelength: number) {
  let total = 0;
  let near = 0;
  let far = 0;
  set.moments().forEach(({ radiusSquared, spectrumSquared }, i) => {
    total += powers[i]!;
    near += powers[i]! * radiusSquared;
    far += powers[i]! * spectrumSquared;
  });
  if (total === 0) return mixtureOf(set, new Float64Array(powers.length).fill(1), coreRadius, wavelength);
  return {
    radius: Math.sqrt((2 * near) / total) * coreRadius,
    halfAngle: Math.asin(
      Math.min(1, (Math.sqrt((2 * far) / total) * wavelength) / (2 * Math.PI * coreRadius)),
    ),
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
