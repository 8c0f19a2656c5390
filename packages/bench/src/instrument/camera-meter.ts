import { lightFromSrgb } from '@coreward/optics';
import type { Picture } from '../gauge/picture.ts';
import type { CameraAim } from './camera-aim.ts';
import { type CameraDark, isOf, lightOfCode } from './camera-dark.ts';

/** What one picture says of the light in a region. */
export interface CameraReading {
  /** `clipped`: a pixel is full, the light may be more; `dark`: nothing stands out of what is there with the beam blocked. */
  readonly kind: 'light' | 'clipped' | 'dark';
  /** Sum of the light, the dark one taken off, in full pixels: in proportion to the power. */
  readonly value: number;
  /** Standard deviation of a reading by the rounding to codes alone: the least it can be. */
  readonly rounding: number;
  /** Scatter of a reading with the beam blocked; null without a dark frame. */
  readonly floor: number | null;
  /** Highest code as a share of full scale, as coded. */
  readonly topCode: number;
  /** Full pixels, those that are full without light left out. */
  readonly full: number;
  /** Share of a round Gaussian spot that may be lost below the first code: a peak this faint cuts off the skirts. */
  readonly lost: number;
}

/** From this code on a camera no longer counts: as the gauge of its linearity has it. */
const clipCode = 250;
/** A pixel as bright as this with the beam blocked is a hot one and says nothing. */
const hotLight = 0.5;
/** A reading less than so many scatters above the dark is none. */
const leastSeen = 4;
/** Without a dark frame: no code above this, of 255, is a covered lens or the dark (common practice, no source). */
const coveredCode = 12;

/**
 * The light in a region, added up in proportion to the power.
 *
 * Valid for a camera that writes sRGB with exposure, gain and white balance held; how far it keeps to that is for the gauge
 * of its linearity to tell.
 *
 * @source rounding to a step scatters by step/√12: B. Widrow and I. Kollár, Quantization Noise (2008), 1 (from memory);
 *   of a Gaussian I·exp(−2r²/w²) the share t/I lies where it is fainter than t: elementary
 */
export function cameraReading(picture: Picture, aim: CameraAim, dark: CameraDark | null): CameraReading {
  const { samples, channels, width } = picture;
  const { region, channel } = aim;
  const own = dark !== null && isOf(dark, picture) ? dark : null;
  let [value, rounding, scatter] = [0, 0, 0];
  let [top, full] = [0, 0];
  for (let y = region.y; y < region.y + region.height; y++) {
    for (let x = region.x; x < region.x + region.width; x++) {
      const at = (y * width + x) * channels;
      const code = samples[at + channel]!;
      value += lightOfCode[code]!;
      rounding += stepSquares[code]!;
      if (own !== null) {
        const mean = own.sum[at + channel]! / own.count;
        value -= mean;
        scatter += Math.max(0, own.squares[at + channel]! / own.count - mean * mean);
      }
      const isHot = own !== null && own.sum[at + channel]! > hotLight * own.count;
      if (isHot) continue;
      if (code > top) top = code;
      // a camera mixes its channels after they were cut off: one that is full spoils the others
      for (let k = 0; k < channels; k++)
        if (samples[at + k]! >= clipCode) {
          full += 1;
          break;
        }
    }
  }
  const pixels = region.width * region.height;
  const floor = own === null ? null : floorOf(own.count, scatter, pixels);
  const isDark = floor === null ? top <= coveredCode : value < leastSeen * floor;
  return {
    kind: full > 0 ? 'clipped' : isDark ? 'dark' : 'light',
    value,
    rounding: Math.sqrt(rounding / 12),
    floor,
    topCode: top / 255,
    full,
    lost: Math.min(1, lightFromSrgb(0.5 / 255) / Math.max(lightOfCode[top]!, 1e-9)),
  };
}

/** Square of the step of light between a code and its neighbours. */
const stepSquares = Float32Array.from({ length: 256 }, (_, code) => {
  const [below, above] = [Math.max(0, code - 1), Math.min(255, code + 1)];
  return ((lightOfCode[above]! - lightOfCode[below]!) / (above - below)) ** 2;
});

/** Scatter of a reading about the dark frame's mean; where codes stand still, as far as a code may hide. */
function floorOf(count: number, scatter: number, pixels: number): number {
  const seen = count > 1 ? (scatter * count) / (count - 1) : 0;
  const hidden = (pixels * stepSquares[0]!) / 12;
  return Math.sqrt(Math.max(seen, hidden) * (1 + 1 / count));
}

/** Whether a region is hardly darker with the beam blocked than it was: then perhaps it was not blocked. */
export const isHardlyDarker = (before: CameraReading, blocked: CameraReading): boolean =>
  before.kind !== 'dark' && blocked.value > 0.5 * before.value;
