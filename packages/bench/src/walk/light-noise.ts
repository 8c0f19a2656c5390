import {
  floorsAsLight,
  lastDigitOf,
  noiseOfBends,
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
 * However long it is looked at, it is known no better than the last digit of the meter tells.
 *
 * @source of the digit: JCGM 100:2008 (GUM), F.2.2.1: u = δx/√12, the values within one digit being all as likely
 * @param dark what the meter shows without light
 */
export function ofItsLight(shown: Shown, window: ReadingWindow, dark: number): Shown {
  const sd = Math.hypot(sdOfLight(shown, window, dark), lastDigitOf(window) / Math.sqrt(12));
  return { ...shown, sd };
}

function sdOfLight(shown: Shown, window: ReadingWindow, dark: number): number {
  const { moments } = window;
  const ofMoment = noiseOfWindow(window);
  // nothing is told yet, or nothing is noisy
  if (ofMoment === null || ofMoment === 0) return shown.sd;
  const floor = floorsAsLight * Math.abs(dark);
  const shares = moments.slice(2).flatMap(({ value }, i) => {
    const [one, two] = [moments[i]!.value, moments[i + 1]!.value];
    const level = (one + two + value) / 3 - dark + floor;
    return level > 0 ? [Math.abs(one - 2 * two + value) / level] : [];
  });
  if (shares.length === 0) return shown.sd;
  const share = Math.min(mostNoise, noiseOfBends(shares));
  // of what is shown, which is the middle of several moments
  const byLight = share * Math.max(0, shown.value - dark + floor) * (shown.sd / ofMoment);
  return Math.min(Math.max(shown.sd, byLight), clamp * byLight);
}
