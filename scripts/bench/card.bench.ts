import { cardSpot, type Picture } from '../../packages/bench/src/index.ts';
import { seededUniform } from '../../packages/optics/src/index.ts';
import { cardPattern, type DrawnCard, drawnPicture } from '../calibrate/card-pictures.ts';
import type { Timing } from './modes.bench.ts';

const card: DrawnCard = {
  width: 640,
  height: 480,
  pixelsPerMetre: 12e3,
  tilt: 0,
  tiltAxis: 0,
  distance: 0.2,
  contrast: 0.4,
  grain: 1.5,
  unevenness: 0.03,
  patternLength: 3e-3,
  ambient: 0.03,
  noise: 0.004,
  colour: [0.1, 1, 0.15],
};

/** How long the spot on a card takes to be found: in every picture of a stream, and in one of twelve megapixels. */
export function benchCards(): readonly Timing[] {
  const random = seededUniform(5);
  const spot = { x: 2e-3, y: -1e-3, diameter: 2.5e-3, ratio: 1, azimuth: 0, peak: 0.5 };
  const stream = drawnPicture(card, [spot], cardPattern(card, random), random);
  return [
    { name: 'spot on a card, 640 × 480 in colour', microseconds: best(stream, 40), goal: 10_000 },
    {
      name: 'spot on a card, 12 megapixels in colour',
      microseconds: best(enlarged(stream, 6), 3),
      goal: 1e6,
    },
  ];
}

function best(picture: Picture, runs: number): number {
  const times = Array.from({ length: runs }, () => {
    const start = performance.now();
    cardSpot(picture);
    return (performance.now() - start) * 1000;
  });
  return Math.min(...times);
}

/** Each pixel as a square of so many: 640 × 480 becomes 3840 × 2880. */
function enlarged(picture: Picture, times: number): Picture {
  const { width, height, samples } = picture;
  const wide = width * times;
  const large = new Uint8Array(wide * height * times * 3);
  for (let y = 0; y < height * times; y++)
    for (let x = 0; x < wide; x++) {
      const from = 3 * (Math.floor(y / times) * width + Math.floor(x / times));
      for (let k = 0; k < 3; k++) large[3 * (y * wide + x) + k] = samples[from + k]!;
    }
  return { ...picture, width: wide, height: height * times, samples: large };
}
