import type { Remark } from './expected.ts';
import { netLosses } from './net-losses.ts';
import { lossText } from './remark-text.ts';
import { farEndRemarks } from './remarks-far-end.ts';
import { fibreRemarks } from './remarks-fibre.ts';
import { partRemarks } from './remarks-parts.ts';
import { rangeRemarks } from './remarks-range.ts';
import { spotRemarks } from './remarks-spot.ts';
import type { StatedBench } from './stated-bench.ts';
import type { Told } from './told.ts';

/** What this launch ought to know about itself: first what keeps light out, then what to change, then what misleads. */
export function remarksOn(told: Told, bench: StatedBench): readonly Remark[] {
  const remarks = [
    ...spotRemarks(told, bench),
    ...limits(told),
    ...fibreRemarks(told, bench),
    ...partRemarks(told),
    ...farEndRemarks(told, bench),
    ...rangeRemarks(told),
  ];
  const order = { limits: 0, change: 1, know: 2 } as const;
  return remarks
    .map((remark, i) => ({ remark, i }))
    .sort((a, b) => order[a.remark.kind] - order[b.remark.kind] || a.i - b.i)
    .map(({ remark }) => remark);
}

/** The largest losses, each with what others give back of it, if any costs more than a tenth of a decibel. */
function limits({ ledger }: Told): readonly Remark[] {
  const worst = netLosses(ledger)
    .filter(({ transmission }) => transmission < 0.977)
    .sort((a, b) => a.transmission - b.transmission);
  if (worst.length === 0) {
    return [
      {
        id: 'nothing-limits',
        kind: 'limits',
        text: 'No single loss costs more than 0.1 dB: what is left is the sum of small ones.',
      },
    ];
  }
  // beside a large loss nobody looks at one of a tenth of it
  const telling = worst.filter(({ transmission }) => transmission < worst[0]!.transmission ** 0.1);
  const names = telling.slice(0, 3).map(({ label, transmission, alone }) => {
    const net = transmission > alone * 1.005 ? ', all in all' : '';
    return `${label} (${lossText(transmission)}${net})`;
  });
  return [{ id: 'largest-losses', kind: 'limits', text: `What costs most: ${names.join(', ')}.` }];
}
