import { forWindow, type Window } from '../../gauge/spot-picture/moments.ts';
import type { CardLight } from './card-light.ts';

/** A JPEG may leave a full pixel a code or two below the top. */
const jpegSlack = 2;
/** So many full pixels are bright grains of speckle, and no flat top. */
const fewFull = 3;

/**
 * Share of a window's pixels that are full, or share the highest code where light should have a peak: a camera may clip
 * below its full scale. 0 where only a few are.
 */
export function clippedShare({ picture, channel, table }: CardLight, window: Window): number {
  const { samples, channels, fullScale, format, width, height } = picture;
  const slack = format === 'jpeg' ? jpegSlack : 0;
  const plane = { width, height, light: table };
  let [top, count] = [0, 0];
  forWindow(plane, window, (at) => {
    top = Math.max(top, samples[at * channels + channel]!);
    count += 1;
  });
  let full = 0;
  forWindow(plane, window, (at) => {
    if (samples[at * channels + channel]! >= top - slack) full += 1;
  });
  if (full <= fewFull) return 0;
  if (top >= fullScale - slack) return full / count;
  // of a Gaussian's upper half so large a share lies within one step of its peak: step/(peak·ln 2)
  const step = (table[top]! - table[Math.max(0, top - 1 - slack)]!) / table[top]!;
  return full / count > 0.06 + 3 * step ? full / count : 0;
}
