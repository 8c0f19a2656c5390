import { median } from '@coreward/optics';
import {
  floorsAsLight,
  noiseOfWindow,
  type ReadingWindow,
  type Shown,
} from '../instrument/reading-window.ts';

/** More is not taken for noise, relative, of one reading. @source benches are drawn with 1 to 3 %, our assumption */
const mostNoise = 0.05;
/** So many times what the light brings is the most that is believed. @source our choice: a floor's quarter against 1 % of ten floors */
const clamp = 3;

/**
 * What is shown, its noise as its own light brings it: behind a click upwards most of the window was dimmer, and takes the noise
 * for less than it is; behind one downwards it was brighter, and dim light would pass for none.
 *
 * @param dark what the meter shows without light
 * @source var(x₁ − 2x₂ + x₃) = 6σ² and half of all normal values within 0.6745 σ, as the window tells its own
 */
export function ofItsLight(shown: Shown, window: ReadingWindow, dark: number): Shown {
  const { moments } = window;
  const ofMoment = noiseOfWindow(window);
  // nothing is told yet, or nothing is noisy
  if (ofMoment === null || ofMoment === 0) return shown;
  const floor = floorsAsLight * Math.abs(dark);
  const shares = moments.slice(2).flatMap(({ value }, i) => {
    const [one, two] = [moments[i]!.value, moments[i + 1]!.value];
    const level = (one + two + value) / 3 - dark + floor;
    return level > 0 ? [Math.abs(one - 2 * two + value) / level] : [];
  });
  if (shares.length === 0) return shown;
  const share = Math.min(mostNoise, median(shares) / (0.6745 * Math.sqrt(6)));
  // of what is shown, which is the middle of several moments
  const byLight = share * Math.max(0, shown.value - dark + floor) * (shown.sd / ofMoment);
  return { ...shown, sd: Math.min(Math.max(shown.sd, byLight), clamp * byLight) };
}
