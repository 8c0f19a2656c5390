import type { Remark } from './expected.ts';
import { percentText } from './remark-text.ts';
import type { Told } from './told.ts';

/**
 * A share that stands outside its own range by more than a tenth of the range's width. That is no mistake of the range:
 * the stated values sit near an optimum, from which nearly every doubt leads down. But it reads like one, so it is told.
 */
export function rangeRemarks({ coupling }: Told): readonly Remark[] {
  const { guided, guidedInterval, fundamental, fundamentalInterval } = coupling;
  return [
    ...outside('The guided share', guided, guidedInterval),
    // with one mode both are the same
    ...(fundamental === null || fundamentalInterval === null || fundamental === guided
      ? []
      : outside('The share in LP01', fundamental, fundamentalInterval)),
  ];
}

function outside(
  name: string,
  value: number,
  { low, high }: { low: number; high: number },
): readonly Remark[] {
  const slack = 0.1 * (high - low);
  if (value <= high + slack && value >= low - slack) return [];
  const [side, way] = value > high ? ['above', 'takes some away'] : ['below', 'adds some'];
  return [
    {
      id: `${side}-its-range`,
      kind: 'know',
      text: `${name}, ${percentText(value)}, stands ${side} its own range: it needs everything to be just as stated, and nearly every doubt ${way}. Trust the range.`,
    },
  ];
}
