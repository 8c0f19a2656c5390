import type { RefusalParts } from '../refusal.ts';
import { writeValue } from '../units/write.ts';
import type { CameraReading } from './camera-meter.ts';
import { readingWords } from './reading-words.ts';

/** A camera's reading as it stands on the screen. */
export interface CameraTold {
  readonly kind: CameraReading['kind'];
  /** The relative power; null where it must not be read. */
  readonly value: string | null;
  /** What scatters it, as a share of it; null before it is known. */
  readonly noise: string | null;
  /** What it is refused for, and what mends it. */
  readonly refused: RefusalParts | null;
  /** What to mind, though it can be read. */
  readonly remarks: readonly string[];
}

/** A peak this faint is worth a remark: its skirts are lost by more than one per cent. */
const mostLost = 0.01;

/**
 * A reading in words.
 *
 * @param noise standard deviation of one reading, from one to the next; null before there are enough
 * @param hasDark whether a dark frame is taken off
 */
export function cameraWords(reading: CameraReading, noise: number | null, hasDark: boolean): CameraTold {
  const { kind, value, rounding, full, lost } = reading;
  if (kind === 'clipped') {
    return {
      kind,
      value: null,
      noise: null,
      refused: {
        where: 'camera',
        what: `${full} pixel${full === 1 ? '' : 's'} of the region ${full === 1 ? 'is' : 'are'} full: what lies above is cut off`,
        mend: 'Shorten the exposure or dim the light, until none is full.',
      },
      remarks: [],
    };
  }
  const scatter = Math.max(noise ?? 0, rounding);
  const remarks = [
    ...(hasDark
      ? []
      : ['What else lights the region is counted with it: take the dark frame with the beam blocked.']),
    ...(kind === 'light' && lost > mostLost
      ? [
          `The spot is so faint that ${writeValue(lost, 'fraction', 1)} of it may lie below the camera's first step. Expose longer.`,
        ]
      : []),
  ];
  return {
    kind,
    value: readingWords(value, 'relative'),
    noise:
      noise === null || kind === 'dark' || !(value > 0) ? null : writeValue(scatter / value, 'fraction', 2),
    refused: null,
    remarks,
  };
}
