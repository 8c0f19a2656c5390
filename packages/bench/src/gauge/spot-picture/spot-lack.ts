import { lightBeside, slowNoise, tileSide } from './dark-around.ts';
import { inPixels, type Seen } from './find-spot.ts';
import { forWindow } from './moments.ts';
import type { Plane, PlaneRead } from './plane.ts';
import { lightAtFrame, spotDoubts } from './spot-doubts.ts';

export interface Lack {
  readonly because: string;
  readonly add: string;
}

/** Where no spot was found. */
export const nothing: Lack = {
  because: 'no single spot stands out of the dark in this picture',
  add: 'Crop it to the spot, and darken the room.',
};

/** More of the peak than this at the frame's edge, and the widths are cut: three deviations out. */
const mostAtFrame = 0.012;

/** More of the peak than this beside the spot is light of its own: a second spot or a reflection. */
const mostBeside = 0.008;

/** Why no width can be told of a spot that was found; null where one can. */
export function lackOf(read: PlaneRead, seen: Seen): Lack | null {
  const { plane, step } = read;
  const { spot } = seen;
  if (!spot.settled) return nothing;
  const full = countFull(plane, seen, step);
  if (full > 2) {
    return {
      because: `${full} pixels of the spot are full: what lies above is cut off`,
      add: 'Take it again with a shorter exposure, or weaker light.',
    };
  }
  if (lightAtFrame(seen, peakOf(seen)) > mostAtFrame) {
    return {
      because: 'the frame cuts the spot',
      add: 'Take it again with the whole spot in the picture and as much dark around it.',
    };
  }
  if (isBeside(seen)) {
    return {
      because: 'there is other light beside the spot, as of a reflection',
      add: 'Keep it out of the picture, or crop the picture nearer to the spot.',
    };
  }
  const doubts = spotDoubts(seen, read);
  const relative = Math.hypot(doubts.noise.minor, doubts.background.minor) / (2 * spot.axes.minor ** 2);
  if (relative > 0.15) {
    if (doubts.isUneven) {
      return {
        because: 'the dark around the spot is not even enough to take it off',
        add: 'Shade the camera from other light, or crop the picture nearer to the spot.',
      };
    }
    return {
      because: 'the spot is too faint against the noise around it',
      add: 'Expose longer, darken the room, or average several pictures.',
    };
  }
  return null;
}

/** Whether light stands beside the spot that is neither its own tail nor noise, nor a dark that is uneven all over. */
function isBeside(seen: Seen): boolean {
  const { window, reach, background, noise } = seen.spot;
  const widest = { ...window, major: (6 / reach) * window.major, minor: (6 / reach) * window.minor };
  const beside = lightBeside(seen.blocks, widest, background);
  const scatter = Math.max(2 * noise, slowNoise(seen.blocks, widest, background)) / tileSide;
  return beside > mostBeside * peakOf(seen) && beside > 3 * scatter;
}

/** Full pixels, or pixels that share the highest code where light should have a peak. */
function countFull(plane: Plane, { spot, block }: Seen, step: number): number {
  const window = inPixels(spot.window, block);
  let top = 0;
  forWindow(plane, window, (at) => {
    top = Math.max(top, plane.light[at]!);
  });
  let count = 0;
  forWindow(plane, window, (at) => {
    if (plane.light[at]! > top - step / 2) count += 1;
  });
  if (top > 1 - step / 2) return count;
  // one step below the peak of a Gaussian lie 2πσ²·step/peak pixels
  const expected = (2 * Math.PI * spot.axes.major * spot.axes.minor * block ** 2 * step) / top;
  return count > 12 && count > 5 * expected + 12 ? count : 0;
}

/** Light of the brightest block above the dark. */
export function peakOf({ spot, blocks }: Seen): number {
  const { window, background } = spot;
  let top = 0;
  forWindow(blocks, window, (at) => {
    top = Math.max(top, blocks.light[at]!);
  });
  return top - background.level - background.slopeX * window.x - background.slopeY * window.y;
}
