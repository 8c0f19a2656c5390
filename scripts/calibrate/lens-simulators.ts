import { glassNamed, refractiveIndex } from '@coreward/optics';
import { between, evenly, readings, type Simulator, stated } from './simulated.ts';

/** Focal lengths: rulers read to 0.5 mm, distances to 2 mm, as the gauges assume. */
export const lensSimulators: readonly Simulator[] = [
  {
    gauge: 'imaging',
    what: '1 to 8 pairs, distances to 2 mm',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const focal = between(random, 0.03, 0.2);
      const pairs = Array.from({ length: Math.floor(between(random, 1, 9)) }, () => {
        const object = focal * between(random, 1.4, 4);
        return [object, 1 / (1 / focal - 1 / object)] as const;
      });
      const read = (x: number): number => x + 2e-3 * normal();
      return {
        readings: readings({
          columns: {
            'object distance': pairs.map(([a]) => read(a)),
            'image distance': pairs.map(([, b]) => read(b)),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'reverse-radius',
    what: '1 to 6 diameters to 0.2 mm, mode field diameter to 3 %',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const [focal, wavelength, mode] = [
        between(random, 4e-3, 20e-3),
        between(random, 450e-9, 850e-9),
        between(random, 3.5e-6, 6e-6),
      ];
      const diameter = (4 * wavelength * focal) / (Math.PI * mode);
      const read = Array.from(
        { length: Math.floor(between(random, 1, 7)) },
        () => diameter + 0.2e-3 * normal(),
      );
      return {
        readings: readings({
          columns: { diameter: read },
          settings: {
            wavelength: stated(wavelength),
            'mode field diameter': stated(mode * (1 + 0.03 * normal())),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'far-wall-spot',
    what: '2 to 8 distances to 10 m, diameters to 0.5 mm, mode field diameter to 3 %',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const [focal, wavelength, mode] = [
        between(random, 3e-3, 8e-3),
        between(random, 500e-9, 850e-9),
        between(random, 3.5e-6, 6e-6),
      ];
      const waist = (2 * wavelength * focal) / (Math.PI * mode);
      const distance = evenly(0.3, between(random, 6, 10), Math.floor(between(random, 2, 9)));
      const diameter = distance.map(
        (z) => 2 * Math.hypot(waist, (wavelength * (z - focal)) / (Math.PI * waist)) + 0.5e-3 * normal(),
      );
      return {
        readings: readings({
          columns: { distance, diameter: diameter.map((d) => Math.max(d, 1e-4)) },
          settings: {
            wavelength: stated(wavelength),
            'mode field diameter': stated(mode * (1 + 0.03 * normal())),
          },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
  {
    gauge: 'two-colour-focus',
    what: '5 settings for each of 635 and 515 nm, each to 10 µm',
    counted: ['focalLength_m'],
    draw: (random, normal) => {
      const focal = between(random, 8e-3, 25e-3);
      const glass = glassNamed('N-BK7');
      const [a, b] = [635e-9, 515e-9];
      const shift = focal * ((refractiveIndex(glass, a) - 1) / (refractiveIndex(glass, b) - 1) - 1);
      const set = (at: number): number[] => Array.from({ length: 5 }, () => at + 10e-6 * normal());
      const off = (): number => 1e-9 * normal();
      return {
        readings: readings({
          columns: { first: set(2e-3), second: set(2e-3 + shift) },
          settings: { 'wavelength 1': stated(a + off()), 'wavelength 2': stated(b + off()) },
          words: { glass: 'N-BK7' },
        }),
        truth: { focalLength_m: focal },
      };
    },
  },
];
