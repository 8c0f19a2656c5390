import { brentRoot, erfc, spectrum, stepModes } from '@coreward/optics';
import {
  between,
  betweenLog,
  evenly,
  greyPicture,
  readings,
  rounded,
  type Simulator,
  stated,
} from './simulated.ts';

export const beamSimulators: readonly Simulator[] = [
  {
    gauge: 'knife-edge',
    what: '11 to 41 positions over ±1.5 to ±2.5 radii; noise 0.2 to 3 % of full',
    counted: ['radius1e2_m', 'centre_m'],
    draw: (random, normal) => {
      const radius = betweenLog(random, 30e-6, 2e-3);
      const centre = between(random, 1e-3, 9e-3);
      const count = Math.floor(between(random, 11, 42));
      const reach = between(random, 1.5, 2.5) * radius;
      const noise = betweenLog(random, 0.002, 0.03);
      const sign = random() < 0.5 ? 1 : -1;
      const shift = between(random, -0.2, 0.2) * radius;
      const position = evenly(centre + shift - reach, centre + shift + reach, count);
      const power = position.map(
        (x) => 0.05 + 0.5 * erfc((-sign * Math.SQRT2 * (x - centre)) / radius) + noise * normal(),
      );
      return {
        readings: readings({ columns: { position, power } }),
        truth: { radius1e2_m: radius, centre_m: centre },
      };
    },
  },
  {
    gauge: 'knife-edge',
    what: 'the same, with noise of 1 to 4 % of each reading and 0.2 % of full beside',
    counted: ['radius1e2_m', 'centre_m'],
    draw: (random, normal) => {
      const radius = betweenLog(random, 30e-6, 2e-3);
      const centre = between(random, 1e-3, 9e-3);
      const position = evenly(centre - 2 * radius, centre + 2 * radius, Math.floor(between(random, 15, 36)));
      const share = between(random, 0.01, 0.04);
      const power = position.map((x) => {
        const light = 0.5 * erfc((-Math.SQRT2 * (x - centre)) / radius);
        return 0.02 + light * (1 + share * normal()) + 0.002 * normal();
      });
      return {
        readings: readings({ columns: { position, power } }),
        truth: { radius1e2_m: radius, centre_m: centre },
      };
    },
  },
  {
    gauge: 'knife-edge',
    what: 'a log of 2500 to 4000 readings on the way across, in any order; noise 0.5 to 5 % of full',
    counted: ['radius1e2_m', 'centre_m'],
    draw: (random, normal) => {
      const radius = betweenLog(random, 30e-6, 2e-3);
      const centre = between(random, 1e-3, 9e-3);
      const count = Math.floor(between(random, 2500, 4001));
      const noise = betweenLog(random, 0.005, 0.05);
      const position = Array.from({ length: count }, () => centre + between(random, -4, 4) * radius);
      const power = position.map(
        (x) => 0.05 + 0.5 * erfc((Math.SQRT2 * (x - centre)) / radius) + noise * normal(),
      );
      return {
        readings: readings({ columns: { position, power } }),
        truth: { radius1e2_m: radius, centre_m: centre },
      };
    },
  },
  {
    gauge: 'caustic',
    what: '10 to 20 places, half within one Rayleigh length, half from 2 to 4; diameters 0.5 to 5 % off',
    counted: ['waistDiameter_m', 'waistPosition_m', 'fullDivergence_rad', 'm2'],
    draw: (random, normal) => {
      const wavelength = between(random, 405e-9, 1064e-9);
      const m2 = between(random, 1, 3);
      const waist = betweenLog(random, 40e-6, 500e-6);
      const divergence = (4 * m2 * wavelength) / (Math.PI * waist);
      const rayleigh = waist / divergence;
      const z0 = between(random, -0.5, 0.5);
      const half = Math.floor(between(random, 5, 11));
      const noise = betweenLog(random, 0.005, 0.05);
      const offsets = [
        ...evenly(-0.95, 0.95, half),
        ...Array.from({ length: half }, (_, i) => (i % 2 === 0 ? 1 : -1) * between(random, 2.05, 4)),
      ];
      const position = offsets.map((t) => z0 + t * rayleigh);
      const diameter = offsets.map((t) => waist * Math.hypot(1, t) * (1 + noise * normal()));
      return {
        readings: readings({ columns: { position, diameter }, settings: { wavelength: stated(wavelength) } }),
        truth: { waistDiameter_m: waist, waistPosition_m: z0, fullDivergence_rad: divergence, m2 },
      };
    },
  },
  {
    gauge: 'two-distances',
    what: '2 to 6 distances, diameters 0.5 mm off, far from the waist',
    counted: ['fullDivergence_rad'],
    draw: (random, normal) => {
      const divergence = between(random, 2e-3, 20e-3);
      const first = between(random, 0.5, 1.5);
      const distance = evenly(
        first,
        first + between(random, 8e-3, 40e-3) / divergence,
        Math.floor(between(random, 2, 7)),
      );
      const slope = 2 * Math.tan(divergence / 2);
      const diameter = distance.map((z) => 1e-3 + slope * z + 0.5e-3 * normal());
      return {
        readings: readings({ columns: { distance, diameter }, settings: { wavelength: stated(635e-9) } }),
        truth: { fullDivergence_rad: divergence },
      };
    },
  },
  spots('16 bits, noise 0.1 to 1 % of the peak', 65535, 0.001, 0.01),
  spots('8 bits, noise 0.4 to 1.5 % of the peak', 255, 0.004, 0.015),
];

function spots(what: string, fullScale: number, least: number, most: number): Simulator {
  return {
    gauge: 'spot-picture',
    what: `${what}; widths 18 to 45 pixels, any azimuth`,
    counted: ['d4sigmaMajor_m', 'd4sigmaMinor_m', 'azimuthMajor_imageDown_rad', 'centroidX_px'],
    draw: (random, normal) => {
      const [width, height] = [150, 130];
      const major = between(random, 22, 45) / 4;
      const minor = (major * between(random, 0.55, 1)) as number;
      const azimuth = between(random, -1.5, 1.5);
      const [x0, y0] = [between(random, 68, 82), between(random, 58, 72)];
      const peak = between(random, 0.5, 0.9) * fullScale;
      const dark = between(random, 0.02, 0.08) * fullScale;
      const noise = betweenLog(random, least, most) * peak;
      const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
      const samples = fullScale > 255 ? new Uint16Array(width * height) : new Uint8Array(width * height);
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const [dx, dy] = [x - x0, y - y0];
          const r = ((dx * c + dy * s) / major) ** 2 + ((dy * c - dx * s) / minor) ** 2;
          const code = Math.round(peak * Math.exp(-r / 2) + dark + noise * normal());
          samples[y * width + x] = Math.max(0, Math.min(fullScale, code));
        }
      const pitch = 5.2e-6;
      return {
        readings: readings({
          picture: greyPicture(width, height, samples),
          settings: { pixel: stated(pitch) },
        }),
        truth: {
          d4sigmaMajor_m: 4 * major * pitch,
          d4sigmaMinor_m: 4 * minor * pitch,
          azimuthMajor_imageDown_rad: azimuth,
          centroidX_px: x0,
        },
      };
    },
  };
}

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
  {
    gauge: 'far-field-profile',
    what: 'LP01 of step fibres with V 1.9 to 4, 41 to 121 readings, noise 0.1 to 1 % of the peak',
    counted: ['sin1e2', 'sin5percent', 'sinHalf'],
    draw: (random, normal) => {
      const v = between(random, 1.9, 4);
      const mode = stepModes(v)[0]!;
      const wavelength = 633e-9;
      const coreRadius = (v * wavelength) / (2 * Math.PI * 0.125);
      const peak = spectrum(mode, 0) ** 2;
      const light = (sine: number): number =>
        spectrum(mode, (2 * Math.PI * coreRadius * Math.abs(sine)) / wavelength) ** 2 / peak;
      const at = (share: number): number => brentRoot((sine) => light(sine) - share, 1e-4, 0.16);
      const centre = between(random, -0.01, 0.01);
      const noise = betweenLog(random, 0.001, 0.01);
      const sines = evenly(-0.25, 0.25, Math.floor(between(random, 41, 122)));
      const intensity = sines.map((sine) => light(sine - centre) + noise * normal());
      return {
        readings: readings({ columns: { 'sin theta': sines, intensity } }),
        truth: { sin1e2: at(Math.exp(-2)), sin5percent: at(0.05), sinHalf: at(0.5) },
      };
    },
  },
];

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
