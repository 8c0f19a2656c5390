import { lightFromSrgb, median } from '@coreward/optics';
import type { Picture } from '../../gauge/picture.ts';
import type { Encoding, Plane } from '../../gauge/spot-picture/plane.ts';

/** A picture of a card, the one channel of it that carries the spot, and a map of it small enough to be searched. */
export interface CardLight {
  readonly picture: Picture;
  readonly channel: 0 | 1 | 2;
  readonly table: Float32Array;
  /** Means of square blocks, in shares of full scale. */
  readonly map: Plane;
  /** Pixels along one side of a block of the map. */
  readonly block: number;
}

/** A map has about so many blocks along its longer side: the smallest spot still fills some. */
const mapSide = 320;

/** What the codes of a camera picture are taken for: eight bits are sRGB, sixteen are in proportion to light. */
export const usualEncoding = ({ fullScale }: Picture): Encoding => (fullScale > 255 ? 'linear' : 'srgb');

/** The light on a card in the channel in which something stands out most. */
export function cardLight(picture: Picture, encoding: Encoding): CardLight {
  const { width, height, fullScale } = picture;
  const table = Float32Array.from({ length: fullScale + 1 }, (_, code) =>
    encoding === 'srgb' ? lightFromSrgb(code / fullScale) : code / fullScale,
  );
  const block = Math.max(1, Math.floor(Math.max(width, height) / mapSide));
  const whole = { x: 0, y: 0, width: Math.floor(width / block), height: Math.floor(height / block) };
  const channels = picture.channels === 1 ? ([0] as const) : ([0, 1, 2] as const);
  const channel = channels.length === 1 ? 0 : brightestChannel(picture, table, Math.max(2, block >> 2));
  return { picture, channel, table, map: cutOut({ picture, channel, table }, whole, block), block };
}

/**
 * The channel in which something stands out most. Every so many pixels of every so many rows tell, and are the same ones in
 * all three; the smallest spot that is not lost in a block still covers some.
 */
function brightestChannel(picture: Picture, table: Float32Array, sparse: number): 0 | 1 | 2 {
  const width = Math.floor(picture.width / sparse);
  const height = Math.floor(picture.height / sparse);
  const ranges = ([0, 1, 2] as const).map((channel) => {
    const light = new Float32Array(width * height);
    for (let y = 0, to = 0; y < height; y++) {
      let from = sparse * y * picture.width * 3 + channel;
      for (let x = 0; x < width; x++, from += 3 * sparse) light[to++] = table[picture.samples[from]!]!;
    }
    return rangeOf({ width, height, light });
  });
  return ranges.indexOf(Math.max(...ranges)) as 0 | 1 | 2;
}

/** How far the brightest four neighbours stand above the usual level. */
function rangeOf({ width, height, light }: Plane): number {
  let top = 0;
  for (let y = 1; y < height; y++)
    for (let x = 1; x < width; x++) {
      const at = y * width + x;
      const sum = light[at]! + light[at - 1]! + light[at - width]! + light[at - width - 1]!;
      if (sum > top) top = sum;
    }
  return top / 4 - median(thinnedOut(light, 4000));
}

/** About `most` of the values, evenly. */
export function thinnedOut(values: Float32Array, most: number): Float32Array {
  // an odd stride does not keep to one column
  const stride = Math.max(1, Math.floor(values.length / most)) | 1;
  const kept = new Float32Array(Math.floor(values.length / stride));
  for (let i = 0; i < kept.length; i++) kept[i] = values[i * stride]!;
  return kept;
}

/** A part of a picture, in blocks of pixels. */
export interface Part {
  /** Of its first pixel. */
  readonly x: number;
  readonly y: number;
  /** In blocks. */
  readonly width: number;
  readonly height: number;
}

/** The light of one part of the picture, in means of blocks. */
export function cutOut(
  { picture, channel, table }: Pick<CardLight, 'picture' | 'channel' | 'table'>,
  part: Part,
  block: number,
): Plane {
  const { samples, channels } = picture;
  const { width, height } = part;
  const light = new Float32Array(width * height);
  const share = 1 / block ** 2;
  for (let y = 0; y < height * block; y++) {
    const row = Math.floor(y / block) * width;
    let from = ((part.y + y) * picture.width + part.x) * channels + channel;
    for (let x = 0; x < width; x++) {
      let sum = 0;
      for (let k = 0; k < block; k++, from += channels) sum += table[samples[from]!]!;
      light[row + x]! += sum * share;
    }
  }
  return { width, height, light };
}
