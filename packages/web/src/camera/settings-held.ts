/** What a camera changes by itself and should hold still while light is measured. */
export type HoldName = 'exposure' | 'white balance' | 'focus';

export interface Hold {
  readonly name: HoldName;
  /** `cannot be asked`: this camera, or this browser, offers no such thing. */
  readonly outcome: 'held' | 'refused' | 'cannot be asked';
}

/** How long the camera may expose: its limits and what it is now, in its own steps of 0.1 ms. */
export interface ExposureTime {
  readonly least: number;
  readonly most: number;
  readonly step: number;
  readonly now: number;
}

/**
 * What browsers tell of a camera beyond its size.
 *
 * @source MediaStream Image Capture (W3C): names of capabilities and modes (from memory)
 */
interface CameraFacts {
  readonly exposureMode?: string | readonly string[];
  readonly whiteBalanceMode?: string | readonly string[];
  readonly focusMode?: string | readonly string[];
  readonly exposureTime?: number | { readonly min: number; readonly max: number; readonly step?: number };
  readonly colorTemperature?: number | object;
  readonly focusDistance?: number | object;
}

/** Each mode, and the value that is to stay what it is now. */
const modes = [
  { name: 'exposure', mode: 'exposureMode', value: 'exposureTime' },
  { name: 'white balance', mode: 'whiteBalanceMode', value: 'colorTemperature' },
  { name: 'focus', mode: 'focusMode', value: 'focusDistance' },
] as const;

/** The part of a video track that is asked; a test plays it, for the browser's fake camera has none of it. */
export interface HeldTrack {
  readonly getCapabilities?: () => object;
  readonly getSettings: () => object;
  readonly applyConstraints: (constraints: MediaTrackConstraints) => Promise<void>;
}

/** Asks a camera to hold still what it would change by itself, at what it is now. */
export async function holdSettings(track: HeldTrack): Promise<readonly Hold[]> {
  const can = (track.getCapabilities?.() ?? {}) as CameraFacts;
  const holds: Hold[] = [];
  for (const { name, mode, value } of modes) {
    const offered = can[mode];
    if (!Array.isArray(offered) || !offered.includes('manual')) {
      holds.push({ name, outcome: 'cannot be asked' });
      continue;
    }
    const now = (track.getSettings() as CameraFacts)[value];
    const keeps = typeof now === 'number' ? { [value]: now } : {};
    holds.push({
      name,
      outcome: (await applied(track, { [mode]: 'manual', ...keeps })) ? 'held' : 'refused',
    });
  }
  return holds;
}

/** The exposure as it may be set; null where the camera cannot be told. */
export function exposureOf(track: HeldTrack): ExposureTime | null {
  const limits = ((track.getCapabilities?.() ?? {}) as CameraFacts).exposureTime;
  const now = (track.getSettings() as CameraFacts).exposureTime;
  if (typeof limits !== 'object' || typeof now !== 'number' || !(limits.max > limits.min)) return null;
  return { least: limits.min, most: limits.max, step: limits.step ?? 1, now };
}

/** Sets the exposure; `false` if the camera does not take it. */
export const setExposure = (track: HeldTrack, time: number): Promise<boolean> =>
  applied(track, { exposureMode: 'manual', exposureTime: time });

/** Whether the camera took it and says so. */
async function applied(track: HeldTrack, wanted: object): Promise<boolean> {
  try {
    await track.applyConstraints({ advanced: [wanted as MediaTrackConstraintSet] });
  } catch {
    return false;
  }
  const settings = track.getSettings() as Readonly<Record<string, unknown>>;
  return Object.entries(wanted).every(([key, value]) => typeof value !== 'string' || settings[key] === value);
}
