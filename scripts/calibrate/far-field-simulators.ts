import { brentRoot, spectrum, stepModes } from '@coreward/optics';
import { between, betweenLog, evenly, readings, rounded, type Simulator } from './simulated.ts';

export const farFieldSimulators: readonly Simulator[] = [
  cones(
    '6 to 12 distances, radii 0.5 to 4 % off',
    (radius, share, normal) => radius * (1 + share * normal()),
    [0.005, 0.04],
  ),
  cones(
    '6 to 12 distances, radii 0.05 to 0.3 mm off',
    (radius, off, normal) => radius + off * normal(),
    [5e-5, 3e-4],
  ),
  cones(
    '6 to 12 distances, diameters read to half a millimetre',
    (radius) => rounded(2 * radius, 0.5e-3) / 2,
    [1, 2],
  ),
  profiles({}),
  profiles({
    and: '; what noise takes below nought is read as nought',
    read: (reading) => Math.max(0, reading),
  }),
  profiles({ v: [1.6, 1.9] }),
  profiles({ noise: [0.01, 0.03] }),
  profiles({
    v: [2, 4],
    noise: [0.005, 0.03],
    reach: 0.15,
    and: '; read out to sin θ = 0.15 only, on a dark of 2 %',
    dark: 0.02,
  }),
];

interface Profiles {
  readonly v?: readonly [number, number];
  readonly noise?: readonly [number, number];
  /** Sine of the last reading on either side. */
  readonly reach?: number;
  /** As a share of the peak. */
  readonly dark?: number;
  readonly read?: (reading: number) => number;
  readonly and?: string;
}

function profiles({
  v: ends = [1.9, 4],
  noise: noises = [0.001, 0.01],
  reach = 0.25,
  dark = 0,
  read = (reading) => reading,
  and = '',
}: Profiles): Simulator {
  return {
    gauge: 'far-field-profile',
    what: `LP01 of step fibres with V ${ends[0]} to ${ends[1]}, 41 to 121 readings, noise ${100 * noises[0]} to ${100 * noises[1]} % of the peak${and}`,
    counted: ['sin1e2', 'sin5percent', 'sinHalf'],
    draw: (random, normal) => {
      const v = between(random, ...ends);
      const mode = stepModes(v)[0]!;
      const wavelength = 633e-9;
      const coreRadius = (v * wavelength) / (2 * Math.PI * 0.125);
      const peak = spectrum(mode, 0) ** 2;
      const light = (sine: number): number =>
        spectrum(mode, (2 * Math.PI * coreRadius * Math.abs(sine)) / wavelength) ** 2 / peak;
      const at = (share: number): number => brentRoot((sine) => light(sine) - share, 1e-4, 0.18);
      const centre = between(random, -0.01, 0.01);
      const noise = betweenLog(random, ...noises);
      const sines = evenly(-reach, reach, Math.floor(between(random, 41, 122)));
      const intensity = sines.map((sine) => read(dark + light(sine - centre) + noise * normal()));
      return {
        readings: readings({ columns: { 'sin theta': sines, intensity } }),
        truth: { sin1e2: at(Math.exp(-2)), sin5percent: at(0.05), sinHalf: at(0.5) },
      };
    },
  };
}

function cones(
  what: string,
  read: (radius: number, size: number, normal: () => number) => number,
  [least, most]: readonly [number, number],
): Simulator {
  return {
    gauge: 'far-field-cone',
    what,
    counted: ['na5percent', 'endFaceAtReadingZ_m'],
    draw: (random, normal) => {
      const na = between(random, 0.08, 0.4);
      const slope = na / Math.sqrt(1 - na * na);
      const end = between(random, -3e-3, 3e-3);
      const size = betweenLog(random, least, most);
      const z = evenly(10e-3, 60e-3, Math.floor(between(random, 6, 13)));
      const radius = z.map((at) => rounded(read(slope * (at - end), size, normal), 1e-7));
      return {
        readings: readings({ columns: { 'reading z': z, radius }, words: { level: '5%' } }),
        truth: { na5percent: na, endFaceAtReadingZ_m: end },
      };
    },
  };
}
