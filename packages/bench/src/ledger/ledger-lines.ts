import type { Forecast, LedgerEntry, LedgerGroup } from '../forecast/expected.ts';
import { writeDecibel } from '../units/write.ts';
import { figure, intervalText, shareText } from './figures.ts';

/** One loss, ready to be read. */
export interface LedgerLine {
  readonly id: string;
  readonly label: string;
  /** `−0.13 dB`; `+0.05 dB` for an overlap that gains what an earlier one gave away. */
  readonly loss: string;
  /** `97 %` passes. */
  readonly passes: string;
  /** `96.1 to 97.9 %`, 90 %; empty where no doubt would show in these digits. */
  readonly interval: string;
  /** Whether it takes nothing, and surely so, in the digits that are shown. */
  readonly costsNothing: boolean;
  /** What is left behind it: `11.2 mW`. */
  readonly power: string;
  /** The same as a share of the laser, to be drawn. */
  readonly left: number;
}

/** The losses of one stretch of the way. */
export interface LedgerStretch {
  readonly group: LedgerGroup;
  readonly heading: string;
  readonly lines: readonly LedgerLine[];
}

const headings: Readonly<Record<LedgerGroup, string>> = {
  path: 'On the way',
  lens: 'Through the lens',
  facet: 'Into the glass',
  overlap: 'From spot to core, cause by cause',
  fibre: 'Along the fibre',
  output: 'Out of the far end',
};

/** The ledger in the order in which light meets each loss, stretch by stretch, with what is left behind each. */
export function ledgerLines({
  launch,
  ledger,
}: Pick<Forecast, 'launch' | 'ledger'>): readonly LedgerStretch[] {
  const stretches: { group: LedgerGroup; heading: string; lines: LedgerLine[] }[] = [];
  let left = 1;
  for (const entry of ledger) {
    const { group } = entry;
    left *= entry.transmission;
    const line = ledgerLine(entry, left, launch.laser.power.value);
    const last = stretches.at(-1);
    if (last?.group === group) last.lines.push(line);
    else stretches.push({ group, heading: headings[group], lines: [line] });
  }
  return stretches;
}

/**
 * One loss, ready to be read.
 *
 * @param left share of the laser's light that is left behind it
 * @param laserPower W
 */
export function ledgerLine(
  { id, label, transmission, low, high }: LedgerEntry,
  left: number,
  laserPower: number,
): LedgerLine {
  const loss = writeDecibel(transmission);
  const interval = intervalText({ low, high }, 'fraction') ?? '';
  return {
    id,
    label,
    loss,
    passes: shareText(transmission),
    interval,
    costsNothing: loss === '0 dB' && interval === '',
    power: figure(left * laserPower, 'power', 3),
    left,
  };
}
