import type { Forecast } from '../forecast/expected.ts';
import { intervalText, shareText, valueText } from './figures.ts';
import type { Block } from './section.ts';

/** The whole forecast in one sentence: `2.1 mW leaves the far end (1.6 to 2.6 mW, 90 %): 18 % of the laser.` */
export function verdict({ output: { power, fractionOfLaser } }: Forecast): string {
  const value = valueText(power, 'power');
  const interval = intervalText(power, 'power');
  const range = interval === null ? '' : ` (${interval}, 90 %)`;
  return `${value} leaves the far end${range}: ` + `${shareText(fractionOfLaser.value)} of the laser.`;
}

/** The verdict, and what keeps it from being better. */
export function verdictBlocks(forecast: Forecast): readonly Block[] {
  const limits = forecast.remarks.filter(({ kind }) => kind === 'limits');
  return [verdict(forecast), ...limits.map(({ text }) => text)].map((text) => ({ kind: 'text', text }));
}

/** How ranges are meant, once for the whole page. */
export const howToRead = 'In brackets: the range that holds the truth nine times in ten.';
