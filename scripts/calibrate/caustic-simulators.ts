import { between, betweenLog, evenly, readings, type Simulator, stated } from './simulated.ts';

export const causticSimulators: readonly Simulator[] = [
  caustics('diameters 0.5 to 5 % off', 0.05, (width, off) => width * (1 + off)),
  caustics('diameters off by one length, 0.5 to 3 % of the waist', 0.03, (width, off) => width + off),
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
];

/**
 * @param most of the noise
 * @param read what is read of a width, both in waists, and how far it is off
 */
function caustics(what: string, most: number, read: (width: number, off: number) => number): Simulator {
  return {
    gauge: 'caustic',
    what: `10 to 20 places, half within one Rayleigh length, half from 2 to 4; ${what}`,
    counted: ['waistDiameter_m', 'waistPosition_m', 'fullDivergence_rad', 'm2'],
    draw: (random, normal) => {
      const wavelength = between(random, 405e-9, 1064e-9);
      const m2 = between(random, 1, 3);
      const waist = betweenLog(random, 40e-6, 500e-6);
      const divergence = (4 * m2 * wavelength) / (Math.PI * waist);
      const rayleigh = waist / divergence;
      const z0 = between(random, -0.5, 0.5);
      const half = Math.floor(between(random, 5, 11));
      const noise = betweenLog(random, 0.005, most);
      const offsets = [
        ...evenly(-0.95, 0.95, half),
        ...Array.from({ length: half }, (_, i) => (i % 2 === 0 ? 1 : -1) * between(random, 2.05, 4)),
      ];
      const position = offsets.map((t) => z0 + t * rayleigh);
      const diameter = offsets.map((t) => read(Math.hypot(1, t), noise * normal()) * waist);
      return {
        readings: readings({ columns: { position, diameter }, settings: { wavelength: stated(wavelength) } }),
        truth: { waistDiameter_m: waist, waistPosition_m: z0, fullDivergence_rad: divergence, m2 },
      };
    },
  };
}
