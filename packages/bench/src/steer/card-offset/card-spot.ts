import { median, medianDeviation } from '@coreward/optics';
import type { Picture } from '../../gauge/picture.ts';
import { isInside, mainAxes, type Window } from '../../gauge/spot-picture/moments.ts';
import { type Encoding, removeHotPixels } from '../../gauge/spot-picture/plane.ts';
import { type BoxSums, type BrightPlace, boxSums, brightestPlace } from './bright-place.ts';
import { type CardLight, cardLight, cutOut, thinnedOut, usualEncoding } from './card-light.ts';
import { type FittedBell, fitBell } from './fit-bell.ts';
import { clippedShare } from './full-pixels.ts';
import { type Bell, firstBell, roundBell, windowOf } from './start-spot.ts';

/** The spot of a beam on a card, in pixels of its picture: x right, y down, pixel centres at whole numbers. */
export interface CardSpot {
  readonly x: number;
  readonly y: number;
  /** Ellipse at 1/e² of the peak: half axes in pixels, the azimuth from +x towards +y (down), rad. */
  readonly ellipse: { readonly major: number; readonly minor: number; readonly azimuth: number };
  /** Second central moments, px². */
  readonly square: { readonly xx: number; readonly yy: number; readonly xy: number };
  /** Peak as a share of the camera's full scale, in light. */
  readonly peak: number;
  /** Standard uncertainty of the centre in deviations of the spot, by cause. */
  readonly centre: FittedBell['centre'];
  /** Size of the picture, px. */
  readonly width: number;
  readonly height: number;
}

/** Why there is no spot to be read. */
export type SpotLack =
  | 'missing'
  | 'ambiguous'
  | 'clipped'
  | 'cut off'
  | 'too large'
  | 'too small'
  | 'no spot';

/** A spot, or what is amiss with the picture. */
export type CardSpotRead =
  | { readonly kind: 'spot'; readonly spot: CardSpot }
  | { readonly kind: 'lack'; readonly lack: SpotLack };

/** A deviation of the spot is kept at about so many blocks: more cost time and tell no more. */
const blocksPerDeviation = 6;
/** How often the scatter of the map something must stand out to be looked at. */
const leastSeen = 7;
/** Something else this bright beside the spot, as a share of its peak, and one cannot tell which is meant. */
const mostBeside = 0.25;
/** Diameter at 1/e²: least, in pixels, and most, as a share of the picture's shorter side. */
const leastDiameter = 4;
const mostDiameter = 0.62;
/** Long axis over short one. */
const mostRatio = 3;
/** Share of the spot's core that may be clipped. */
const mostClipped = 0.03;
/** What a bell may leave over, as a share of its height: grains as coarse as the spot, or two spots side by side. */
const mostMisfit = 0.22;

/**
 * Finds the one spot on a card.
 *
 * Valid for a lone, compact spot on a card that is lit evenly or faintly: speckle, grain and ambient light are looked
 * through.
 *
 * @param encoding how codes stand for light; left out: sRGB for eight bits
 */
export function cardSpot(picture: Picture, encoding: Encoding = usualEncoding(picture)): CardSpotRead {
  const light = cardLight(picture, encoding);
  const { map, block } = light;
  const sampled = thinnedOut(map.light, 4000);
  const dark = median(sampled);
  const scatter = medianDeviation(sampled);
  if (block === 1) removeHotPixels(map, dark, Math.max(scatter, 1e-4));
  const sums = boxSums(map);
  const place = brightestPlace(sums);
  if (!(place.contrast > Math.max(leastSeen * scatter * grainAt(place.half), 0.004)))
    return lacking('missing');
  const fitted = fittedAt(light, place, dark);
  if (fitted === null) return lacking(whyNot(sums, place));
  const { bell, fine } = fitted;
  const axes = axesOf(bell);
  if (4 * axes.minor < leastDiameter) return lacking('too small');
  if (4 * axes.major > mostDiameter * Math.min(picture.width, picture.height)) return lacking('too large');
  if (clippedShare(light, windowOf(bell, 1.18)) > mostClipped) return lacking('clipped');
  if (isCut(windowOf(bell, 2), picture)) return lacking('cut off');
  if (axes.major > mostRatio * axes.minor || fine.misfit > mostMisfit) return lacking('ambiguous');
  if (isAnotherThere(sums, light, bell)) return lacking('ambiguous');
  if (!(bell.height > 6 * fine.noise || bell.height > 4 * scatter)) return lacking('missing');
  const det = bell.a * bell.c - bell.b ** 2;
  const window = windowOf(bell, 2);
  return {
    kind: 'spot',
    spot: {
      x: bell.x,
      y: bell.y,
      ellipse: { major: window.major, minor: window.minor, azimuth: window.azimuth },
      square: { xx: bell.c / det, yy: bell.a / det, xy: -bell.b / det },
      peak: bell.height,
      centre: fine.centre,
      width: picture.width,
      height: picture.height,
    },
  };
}

const lacking = (lack: SpotLack): CardSpotRead => ({ kind: 'lack', lack });

const axesOf = ({ a, b, c }: Bell): { readonly major: number; readonly minor: number } => {
  const det = a * c - b * b;
  return mainAxes({ xx: c / det, yy: a / det, xy: -b / det });
};

/** Scatter of the mean of a square as a share of that of one block: grain of the card does not average out as noise does. */
const grainAt = (half: number): number => Math.max(0.3, 1 / (2 * half + 1));

/** A place on the map, made exact on pixels, or on blocks of them where the spot is large; lengths in pixels. */
function fittedAt(
  light: CardLight,
  place: BrightPlace,
  dark: number,
): { readonly bell: Bell; readonly fine: FittedBell } | null {
  const { map, picture, block } = light;
  const rough = firstBell(map, roundBell(place.x, place.y, Math.max(1, 0.7 * place.half)), dark);
  if (rough === null) return null;
  const deviation = Math.sqrt(axesOf(rough).major * axesOf(rough).minor) * block;
  const size = Math.max(1, Math.floor(deviation / blocksPerDeviation));
  const middle = { x: block * rough.x + (block - 1) / 2, y: block * rough.y + (block - 1) / 2 };
  const half = Math.ceil(8 * axesOf(rough).major * block);
  const x = Math.max(0, Math.floor(middle.x - half));
  const y = Math.max(0, Math.floor(middle.y - half));
  const part = {
    x,
    y,
    width: Math.floor((Math.min(picture.width, Math.ceil(middle.x + half)) - x) / size),
    height: Math.floor((Math.min(picture.height, Math.ceil(middle.y + half)) - y) / size),
  };
  if (part.width < 6 || part.height < 6) return null;
  const plane = cutOut(light, part, size);
  const share = (block / size) ** 2;
  const start: Bell = {
    x: (middle.x - x - (size - 1) / 2) / size,
    y: (middle.y - y - (size - 1) / 2) / size,
    height: rough.height,
    a: rough.a / share,
    b: rough.b / share,
    c: rough.c / share,
  };
  const finer = firstBell(plane, start, dark) ?? start;
  const fine = fitBell(plane, finer);
  if (fine === null) return null;
  return {
    fine,
    bell: {
      height: fine.bell.height,
      x: x + fine.bell.x * size + (size - 1) / 2,
      y: y + fine.bell.y * size + (size - 1) / 2,
      a: fine.bell.a / size ** 2,
      b: fine.bell.b / size ** 2,
      c: fine.bell.c / size ** 2,
    },
  };
}

/** What to say of a bright place through which no bell could be laid. */
function whyNot({ width, height }: BoxSums, { x, y, half }: BrightPlace): SpotLack {
  const reach = 2 * half;
  if (x < reach || y < reach || x >= width - reach || y >= height - reach) return 'cut off';
  return half > Math.min(width, height) / 6 ? 'too large' : 'no spot';
}

/** Whether a window reaches over the picture's edge. */
function isCut({ x, y, major, minor, azimuth }: Window, { width, height }: Picture): boolean {
  const [c, s] = [Math.cos(azimuth), Math.sin(azimuth)];
  const reachX = Math.hypot(major * c, minor * s);
  const reachY = Math.hypot(major * s, minor * c);
  return x - reachX < -0.5 || y - reachY < -0.5 || x + reachX > width - 0.5 || y + reachY > height - 0.5;
}

/** Whether something else stands out beside the spot, at least half as wide as it and a fair share as bright. */
function isAnotherThere(sums: BoxSums, { block }: CardLight, bell: Bell): boolean {
  const wide = windowOf(bell, 4);
  const window: Window = {
    x: (wide.x - (block - 1) / 2) / block,
    y: (wide.y - (block - 1) / 2) / block,
    major: wide.major / block,
    minor: wide.minor / block,
    azimuth: wide.azimuth,
  };
  const hidden = (x: number, y: number, half: number): boolean =>
    isInside({ ...window, major: window.major + 2 * half, minor: window.minor + 2 * half }, x, y);
  const other = brightestPlace(sums, hidden, Math.floor(window.minor / 8));
  return other.contrast > mostBeside * bell.height * 0.6;
}
