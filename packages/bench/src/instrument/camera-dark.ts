import { lightFromSrgb } from '@coreward/optics';
import type { Picture } from '../gauge/picture.ts';

/** What a camera shows with the beam blocked, pixel by pixel and channel by channel, in shares of full scale. */
export interface CameraDark {
  readonly width: number;
  readonly height: number;
  readonly channels: 1 | 3;
  /** Pictures it is the mean of. */
  readonly count: number;
  /** Sums over those pictures of the light, and of its square. */
  readonly sum: Float32Array;
  readonly squares: Float32Array;
}

/** Pictures a dark frame is the mean of: its own noise then adds 3 % to that of a reading. */
export const darkPictures = 16;

/** Light by code: eight bits are sRGB. */
export const lightOfCode = Float32Array.from({ length: 256 }, (_, code) => lightFromSrgb(code / 255));

/** A dark frame with one more picture; a picture of another size begins it anew. */
export function withDarkPicture(before: CameraDark | null, picture: Picture): CameraDark {
  const { width, height, channels, samples } = picture;
  const goesOn = before !== null && isOf(before, picture);
  const sum = goesOn ? before.sum.slice() : new Float32Array(samples.length);
  const squares = goesOn ? before.squares.slice() : new Float32Array(samples.length);
  for (let i = 0; i < samples.length; i++) {
    const light = lightOfCode[samples[i]!]!;
    sum[i]! += light;
    squares[i]! += light * light;
  }
  return { width, height, channels, count: (goesOn ? before.count : 0) + 1, sum, squares };
}

/** Whether a dark frame is one of pictures like this. */
export const isOf = (
  dark: Pick<CameraDark, 'width' | 'height' | 'channels'>,
  { width, height, channels }: Picture,
): boolean => dark.width === width && dark.height === height && dark.channels === channels;
