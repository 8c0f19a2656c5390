import {
  drawHidden,
  type HiddenLaw,
  type Known,
  plateauCurvature,
  usualHiddenLaw,
  type WalkGeometry,
} from '@coreward/bench';
import { normalFrom, seededUniform } from '@coreward/optics';
import type { BenchToWalk } from './bench-file.ts';

/** A weak wide foot under the peak, as cladding light or a coarse beam leave it. */
export const widerFoot = { share: 1e-3, times: 8 } as const;

/** Core of the fibre of many modes, and how softly its acceptance ends. */
const manyCore = { coreRadius: 25e-6, numericalAperture: 0.2 } as const;
const manySoftness = 0.04;

/** Laws that benches are drawn by: what docs/walk.md tells. */
const laws: Readonly<
  Record<
    string,
    {
      readonly telecom?: true;
      readonly many?: true;
      readonly hidden?: Partial<HiddenLaw>;
      readonly f?: number;
      readonly d?: number;
    }
  >
> = {
  V: {},
  T: { telecom: true },
  'V-cam': { hidden: { offsetError: 0.05e-3 } },
  'T-cam': { telecom: true, hidden: { offsetError: 0.05e-3 } },
  'V-f30': { f: 0.3 },
  'V-d20': { d: 0.2 },
  'V-m2': { hidden: { quality: 1.3 } },
  'V-astig': { hidden: { astigmatism: { ratio: 1.25, apart: 0.8 } } },
  'V-foot': { hidden: { foot: widerFoot } },
  M: { many: true, hidden: { offsetError: 1.2e-3 } },
};

export const lawNames = Object.keys(laws);

/** Benches drawn by a law, one a seed; settings of a walk are chosen on these. */
export function drawnBenches(name: string, [from, to]: readonly [number, number]): readonly BenchToWalk[] {
  const law = laws[name];
  if (law === undefined) throw new Error(`no law is called ${name}`);
  return Array.from({ length: to - from + 1 }, (_, i) => drawn(law, from + i));
}

const visible = [488, 520, 532, 561, 633, 650] as const;

function drawn(law: (typeof laws)[string], seed: number): BenchToWalk {
  const random = seededUniform(seed);
  const normal = () => normalFrom(random);
  const between = (low: number, high: number) => low + (high - low) * random();
  const oneOf = <T>(values: readonly T[]): T => values[Math.floor(random() * values.length)]!;
  const off = (share: number) => Math.exp(share * normal());
  const telecom = law.telecom === true;
  const wavelength = (telecom ? oneOf([1310, 1550]) : oneOf(visible)) * 1e-9;
  const modeRadius = (telecom ? between(4.5, 5.3) : between(1.8, 2.2)) * 1e-6;
  const isMany = law.many === true;
  const focalLength = (isMany ? between(8, 20) : telecom ? between(6, 15) : between(4, 10)) * 1e-3;
  const nearMirror = between(0.08, 0.25);
  const arm = between(0.15, 0.45);
  const tilt = 0.0254 / oneOf([80, 100]) / (between(25, 50) * 1e-3);
  const geometry: WalkGeometry = {
    wavelength,
    modeRadius,
    focalLength,
    nearMirror,
    farMirror: nearMirror + arm,
    tiltPerTurn: [tilt * off(0.03), tilt * off(0.03), tilt * off(0.03), tilt * off(0.03)],
    verticalGain: [Math.SQRT2, Math.SQRT2],
  };
  const wrong = (share: number | undefined) =>
    share === undefined ? 1 : 1 + (random() < 0.5 ? -share : share);
  const typedNear = nearMirror * off(0.05) * wrong(law.d);
  const typedTilt = tilt * off(0.07);
  const peakReading = 10 ** between(-5, 1);
  const typed = {
    modeRadius: modeRadius * off(0.05),
    focalLength: focalLength * (law.f === undefined ? off(0.05) : wrong(law.f)),
    farMirror: typedNear + arm * off(0.05) * wrong(law.d),
  };
  const many = isMany
    ? {
        shape: { kind: 'plateau', softness: manySoftness } as const,
        curvature: plateauCurvature(geometry, manyCore),
      }
    : null;
  const hidden = drawHidden(geometry, { ...usualHiddenLaw, ...law.hidden }, peakReading, random, many);
  const known: Known = {
    ...typed,
    wavelength,
    nearMirror: typedNear,
    tiltPerTurn: [typedTilt, typedTilt, typedTilt, typedTilt],
    verticalGain: geometry.verticalGain,
    // whoever types a launch of such a fibre knows it
    manyModes: isMany,
    floor: hidden.floor * peakReading,
    forecastPeak: null,
    focusThread: null,
  };
  return { seed, hidden, known };
}
