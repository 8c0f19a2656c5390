import { between, betweenLog, greyPicture, readings, type Simulator, stated } from './simulated.ts';

interface Camera {
  readonly fullScale: number;
  /** Of a dark pixel, as shares of the peak: from the least to the most. */
  readonly noise: readonly [number, number];
  /** As shares of full scale, likewise. */
  readonly dark: readonly [number, number];
  /** How far the dark rises across the picture at the most, as a share of full scale. */
  readonly rise: number;
}

const usual: Camera = { fullScale: 255, noise: [0.004, 0.015], dark: [0.02, 0.08], rise: 0 };

export const spotSimulators: readonly Simulator[] = [
  spots('16 bits, noise 0.1 to 1 % of the peak', { ...usual, fullScale: 65535, noise: [0.001, 0.01] }),
  spots('8 bits, noise 0.4 to 1.5 % of the peak', usual),
  spots('8 bits, noise 1.5 to 4 % of the peak', { ...usual, noise: [0.015, 0.04], dark: [0.1, 0.15] }),
  spots('8 bits, noise 0.4 to 1.5 % of the peak, the dark up to 10 % of full scale aslant', {
    ...usual,
    dark: [0.12, 0.15],
    rise: 0.1,
  }),
];

function spots(what: string, camera: Camera): Simulator {
  const { fullScale } = camera;
  return {
    gauge: 'spot-picture',
    what: `${what}; widths 18 to 45 pixels, any azimuth, no pixel full`,
    counted: ['d4sigmaMajor_m', 'd4sigmaMinor_m', 'azimuthMajor_imageDown_rad', 'centroidX_px'],
    draw: (random, normal) => {
      const [width, height] = [150, 130];
      const major = between(random, 22, 45) / 4;
      const minor = major * between(random, 0.55, 1);
      const azimuth = between(random, -1.5, 1.5);
      const [x0, y0] = [between(random, 68, 82), between(random, 58, 72)];
      const wanted = between(random, 0.5, 0.9) * fullScale;
      const dark = between(random, ...camera.dark) * fullScale;
      const noisy = betweenLog(random, ...camera.noise);
      // exposed so that no pixel is full, as the gauge asks: noise and the rise of the dark under the spot have room
      const peak = Math.min(wanted, (fullScale * (1 - camera.rise / 10) - dark) / (1 + 4 * noisy));
      const noise = noisy * peak;
      const [riseX, riseY] = [between(random, -1, 1), between(random, -1, 1)].map(
        (rise) => (rise * camera.rise * fullScale) / width,
      ) as [number, number];
      const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
      const samples = fullScale > 255 ? new Uint16Array(width * height) : new Uint8Array(width * height);
      for (let y = 0; y < height; y++)
        for (let x = 0; x < width; x++) {
          const [dx, dy] = [x - x0, y - y0];
          const r = ((dx * c + dy * s) / major) ** 2 + ((dy * c - dx * s) / minor) ** 2;
          const code = Math.round(
            peak * Math.exp(-r / 2) + dark + riseX * dx + riseY * dy + noise * normal(),
          );
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
