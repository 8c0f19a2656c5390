import type { Picture } from '../gauge/picture.ts';
import { boxSums, brightestPlace } from '../steer/card-offset/bright-place.ts';
import { cardLight } from '../steer/card-offset/card-light.ts';
import { type PictureSize, type Region, regionAround } from './camera-region.ts';

/** What a camera's readings are taken of: one region, in the one channel that sees most of the light. */
export interface CameraAim {
  readonly region: Region;
  readonly channel: 0 | 1 | 2;
}

/** The square that shows a bell of light best has about 1.4 of its deviations; three times that leaves 3 in 100 000 out. */
const reach = 3;
/** Where nothing stands out, a quarter of the picture in its middle. */
const noSpot = 0.25;
/** Less than this above its surroundings, in shares of full scale, is no spot. */
const leastContrast = 0.01;

/** The region around the brightest spot, and the channel that sees it. */
export function aimAtBrightest(picture: Picture): CameraAim {
  const { map, block, channel } = cardLight(picture, 'srgb');
  const place = brightestPlace(boxSums(map));
  if (!(place.contrast > leastContrast)) return aimAt(picture, middleOf(picture));
  const inPixels = (blocks: number): number => block * blocks + (block - 1) / 2;
  const half = Math.ceil(reach * block * (place.half + 0.5));
  return { region: regionAround(inPixels(place.x), inPixels(place.y), half, picture), channel };
}

/** A region that somebody chose, in the channel that sees most there. */
export function aimAt(picture: Picture, region: Region): CameraAim {
  const { samples, channels, width } = picture;
  if (channels === 1) return { region, channel: 0 };
  const sums = [0, 0, 0];
  for (let y = region.y; y < region.y + region.height; y++)
    for (let x = region.x; x < region.x + region.width; x++)
      // squares: a spot counts for more than a bright room
      for (let k = 0; k < 3; k++) sums[k]! += samples[(y * width + x) * channels + k]! ** 2;
  return { region, channel: sums.indexOf(Math.max(...sums)) as 0 | 1 | 2 };
}

const middleOf = (size: PictureSize): Region =>
  regionAround(size.width / 2, size.height / 2, noSpot * Math.min(size.width, size.height), size);
