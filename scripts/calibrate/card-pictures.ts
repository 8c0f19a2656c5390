import type { Picture } from '@coreward/bench';
import { between, betweenLog } from './simulated.ts';

/** One beam's spot on a drawn card. */
export interface DrawnSpot {
  /** On the card, m: x right, y up, from the middle of the picture. */
  readonly x: number;
  readonly y: number;
  /** 1/e² diameters, m, and how they are turned, rad. */
  readonly diameter: number;
  readonly ratio: number;
  readonly azimuth: number;
  /** Mean light in its middle, as a share of full scale. */
  readonly peak: number;
}

/** A card and the camera in front of it, the same for both pictures. */
export interface DrawnCard {
  readonly width: number;
  readonly height: number;
  /** In the middle of the picture, square to the card, px/m. */
  readonly pixelsPerMetre: number;
  /** Of the camera: how far aslant, rad, about an axis that is turned so far, and how far away, m. */
  readonly tilt: number;
  readonly tiltAxis: number;
  readonly distance: number;
  /** Standard deviation of speckle as a share of the mean, and width of a grain, px. */
  readonly contrast: number;
  readonly grain: number;
  /** Rms of the card's own pattern, and its length, m. */
  readonly unevenness: number;
  readonly patternLength: number;
  /** Ambient light, noise of one pixel in light, shares of full scale. */
  readonly ambient: number;
  readonly noise: number;
  /** Which share of the light each channel sees; null: a grey picture. */
  readonly colour: readonly [number, number, number] | null;
}

/** Codes of sRGB. @source IEC 61966-2-1:1999, the encoding (constants from memory) */
export const srgbCode = (light: number): number =>
  light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;

/**
 * A place of the card as the camera sees it, px: the card turned about an axis through its middle, seen from a distance.
 *
 * @source a pinhole camera: elementary
 */
export function seenAt(card: DrawnCard, x: number, y: number): readonly [number, number] {
  const [c, s] = [Math.cos(card.tiltAxis), Math.sin(card.tiltAxis)];
  const [along, across] = [x * c + y * s, y * c - x * s];
  const depth = 1 + (across * Math.sin(card.tilt)) / card.distance;
  const [u, v] = [along / depth, (across * Math.cos(card.tilt)) / depth];
  return [
    (card.width - 1) / 2 + card.pixelsPerMetre * (u * c - v * s),
    (card.height - 1) / 2 - card.pixelsPerMetre * (u * s + v * c),
  ];
}

/** The way back from `seenAt`. */
function onCard(card: DrawnCard, px: number, py: number): readonly [number, number] {
  const [c, s] = [Math.cos(card.tiltAxis), Math.sin(card.tiltAxis)];
  const p = (px - (card.width - 1) / 2) / card.pixelsPerMetre;
  const q = -(py - (card.height - 1) / 2) / card.pixelsPerMetre;
  const [u, v] = [p * c + q * s, q * c - p * s];
  const across = v / (Math.cos(card.tilt) - (v * Math.sin(card.tilt)) / card.distance);
  const along = u * (1 + (across * Math.sin(card.tilt)) / card.distance);
  return [along * c - across * s, along * s + across * c];
}

/** The pattern of a card: a few waves in all directions, fixed for both pictures. */
export function cardPattern(card: DrawnCard, random: () => number): (x: number, y: number) => number {
  const waves = Array.from({ length: 8 }, () => {
    const [angle, phase] = [2 * Math.PI * random(), 2 * Math.PI * random()];
    const k = (2 * Math.PI * betweenLog(random, 0.5, 2)) / card.patternLength;
    return [k * Math.cos(angle), k * Math.sin(angle), phase] as const;
  });
  const size = card.unevenness * Math.sqrt(2 / waves.length);
  return (x, y) =>
    Math.max(0.2, 1 + size * waves.reduce((sum, [a, b, p]) => sum + Math.cos(a * x + b * y + p), 0));
}

/**
 * A picture of spots on a card, sRGB of eight bits. Speckle is the squared length of a steady and a random phasor: its
 * contrast is √(1 − s²) where the steady one has the share s of the mean, and the random ones are blurred to grains.
 *
 * @source J. W. Goodman, Speckle Phenomena in Optics, ch. 3: a constant phasor plus a random phasor sum (from memory)
 */
export function drawnPicture(
  card: DrawnCard,
  spots: readonly DrawnSpot[],
  pattern: (x: number, y: number) => number,
  random: () => number,
): Picture {
  const { width, height, contrast, colour } = card;
  const steady = Math.sqrt(Math.max(0, 1 - contrast ** 2));
  const channels = colour === null ? 1 : 3;
  const samples = new Uint8Array(width * height * channels);
  const places = spots.map((spot) => {
    const [x, y] = seenAt(card, spot.x, spot.y);
    return { spot, x, y, reach: (1.9 * spot.diameter * card.pixelsPerMetre) | 0 };
  });
  const light = new Float32Array(width * height);
  const own = new Float32Array(width * height);
  for (let py = 0; py < height; py += 1)
    for (let px = 0; px < width; px += 1) {
      const [x, y] = onCard(card, px, py);
      own[py * width + px] = pattern(x, y);
    }
  for (const { spot, x, y, reach } of places) {
    const side = 2 * reach + 1;
    const [re, im] = [grains(side, card.grain, random), grains(side, card.grain, random)];
    for (let v = 0; v < side; v++)
      for (let u = 0; u < side; u++) {
        const [px, py] = [Math.round(x) - reach + u, Math.round(y) - reach + v];
        if (px < 0 || py < 0 || px >= width || py >= height) continue;
        const [cx, cy] = onCard(card, px, py);
        const [dx, dy] = [cx - spot.x, cy - spot.y];
        const [c, s] = [Math.cos(spot.azimuth), Math.sin(spot.azimuth)];
        const r2 =
          ((dx * c + dy * s) / spot.diameter) ** 2 + ((dy * c - dx * s) / (spot.ratio * spot.diameter)) ** 2;
        const k = v * side + u;
        const rough = Math.sqrt((1 - steady) / 2);
        const speckle = (Math.sqrt(steady) + rough * re[k]!) ** 2 + (rough * im[k]!) ** 2;
        light[py * width + px]! += spot.peak * Math.exp(-8 * r2) * speckle;
      }
  }
  const normal = phasorParts(random);
  for (let i = 0; i < light.length; i++) {
    for (let k = 0; k < channels; k++) {
      const seen = (light[i]! * (colour?.[k] ?? 1) + card.ambient) * own[i]! + card.noise * normal();
      samples[i * channels + k] = Math.round(255 * srgbCode(Math.min(1, Math.max(0, seen))));
    }
  }
  return { width, height, channels, samples, fullScale: 255, format: 'png' };
}

/**
 * Normal numbers of mean 0 and deviation 1, two at a time: a random phasor's parts.
 *
 * @source G. E. P. Box and M. E. Muller, Ann. Math. Stat. 29, 610 (1958) (from memory)
 */
function phasorParts(random: () => number): () => number {
  let left: number | null = null;
  return () => {
    if (left !== null) {
      const kept = left;
      left = null;
      return kept;
    }
    const [length, phase] = [Math.sqrt(-2 * Math.log(1 - random())), 2 * Math.PI * random()];
    left = length * Math.sin(phase);
    return length * Math.cos(phase);
  };
}

/** Normal numbers of mean 0 and deviation 1 in a square, blurred to grains `grain` px wide at half of their correlation. */
function grains(side: number, grain: number, random: () => number): Float32Array {
  const normal = phasorParts(random);
  const raw = Float32Array.from({ length: side * side }, normal);
  // the light of a field blurred by exp(−r²/2b²) is correlated as exp(−r²/2b²): half of it at 1.18 b to either side
  const b = grain / 2.355;
  if (b < 0.3) return raw;
  const reach = Math.ceil(3 * b);
  const weights = Array.from({ length: 2 * reach + 1 }, (_, i) =>
    Math.exp(-((i - reach) ** 2) / (2 * b * b)),
  );
  const length = Math.hypot(...weights);
  const blur = (from: Float32Array, step: number): Float32Array =>
    from.map((_, at) => {
      const place = step === 1 ? at % side : Math.floor(at / side);
      let sum = 0;
      for (let k = -reach; k <= reach; k++) {
        const to = (place + k + side) % side;
        sum += weights[k + reach]! * from[at + (to - place) * step]!;
      }
      return sum / length;
    });
  return blur(blur(raw, 1), side);
}

/** A card and two spots as section 3.5 of the plan has them, drawn at random; and the truth. */
export function drawCard(random: () => number) {
  const pixelsPerMetre = betweenLog(random, 8e3, 20e3);
  const field = between(random, 14e-3, 18e-3);
  const card: DrawnCard = {
    width: Math.round(field * pixelsPerMetre * 1.25),
    height: Math.round(field * pixelsPerMetre),
    pixelsPerMetre,
    tilt: (between(random, 0, 20) * Math.PI) / 180,
    tiltAxis: (Math.PI / 2) * Math.floor(4 * random()) + between(random, -0.1, 0.1),
    distance: between(random, 0.12, 0.3),
    contrast: between(random, 0.15, 0.7),
    grain: between(random, 1, 2.5),
    unevenness: between(random, 0, 0.06),
    patternLength: betweenLog(random, 1e-3, 8e-3),
    ambient: betweenLog(random, 0.002, 0.06),
    noise: betweenLog(random, 0.001, 0.01),
    colour:
      random() < 0.5
        ? null
        : (
            [
              [1, 0.06, 0.02],
              [0.08, 1, 0.12],
              [0.03, 0.1, 1],
            ] as const
          )[Math.floor(3 * random())]!,
  };
  const spot = (x: number, y: number): DrawnSpot => ({
    x,
    y,
    diameter: betweenLog(random, 0.8e-3, 4e-3),
    ratio: between(random, 0.8, 1),
    azimuth: between(random, 0, Math.PI),
    // so that hardly a grain is clipped: a bright one has the mean and three contrasts more
    peak: between(random, 0.4, 0.9) / (1 + 2.5 * card.contrast),
  });
  const reverse = spot(between(random, -1.5e-3, 1.5e-3), between(random, -1.2e-3, 1.2e-3));
  const [length, way] = [3e-3 * Math.sqrt(random()), 2 * Math.PI * random()];
  const forward = spot(reverse.x + length * Math.cos(way), reverse.y + length * Math.sin(way));
  return { card, forward, reverse };
}
