import type { Expected } from '../forecast/expected.ts';
import { digitsFor, figure, intervalText, shareText } from './figures.ts';

/** The answer in three figures, for a heading: the power that leaves the far end. */
export interface Headline {
  /** `7.3 mW`. */
  readonly power: string;
  /** `6.1 to 8.4 mW`, 90 %; null where the two ends look the same. */
  readonly range: string | null;
  /** `63 %` of the laser. */
  readonly share: string;
}

/**
 * @param power that leaves the far end, W
 * @param fraction of the laser's, at the stated values
 */
export function headline(power: Expected, fraction: number): Headline {
  return {
    power: figure(power.value, 'power', digitsFor(power, 'power')),
    range: intervalText(power, 'power'),
    share: shareText(fraction),
  };
}
