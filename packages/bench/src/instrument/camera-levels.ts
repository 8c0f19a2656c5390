import { cameraLinearity } from '../gauge/detector/camera-linearity.ts';
import { type Measured, measured } from '../gauge/measured.ts';
import { readQuantity } from '../units/read-quantity.ts';

/** A known level of light, as it was typed, and what the camera read of it. */
export interface CameraLevel {
  readonly level: string;
  readonly value: number;
}

/** A sum over a region has no code at which it is cut off; full pixels were refused before. */
const noClip = '1e15';

/** How far a camera's readings keep to the light, by the gauge of its linearity: an exponent of 1 is in proportion. */
export function cameraLinearityOf(levels: readonly CameraLevel[]): Measured {
  const rows = levels.map(({ level, value }) => `${plain(level)};${value}`);
  const sheet = { settings: { 'clip code': noClip }, text: `light;code\n${rows.join('\n')}\n` };
  return measured(cameraLinearity, sheet, null, 'levels');
}

/** `25 %` as 0.25, a bare number as it is; anything else is refused by the gauge, in its own words. */
function plain(level: string): string {
  for (const dimension of ['number', 'fraction'] as const) {
    const read = readQuantity(level, dimension);
    if (read.ok) return `${read.value}`;
  }
  return level;
}
