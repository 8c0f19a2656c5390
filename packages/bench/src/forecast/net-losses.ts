import type { LedgerEntry } from './expected.ts';

/** A loss, and whether gains of other entries have been set against it. */
export interface NetLoss {
  readonly id: string;
  readonly label: string;
  readonly transmission: number;
  /** As its own entry has it. */
  readonly alone: number;
}

type Entry = Pick<LedgerEntry, 'id' | 'group' | 'label' | 'transmission'>;

/** The losses of a ledger as one judges them; the product of all stays what it is. */
export function netLosses(ledger: readonly Entry[]): readonly NetLoss[] {
  const net = netTransmissions(ledger);
  return ledger.map(({ id, label, transmission }, i) => ({
    id,
    label,
    transmission: net[i]!,
    alone: transmission,
  }));
}

/**
 * What each entry of a ledger lets through, as one judges it: an entry of the overlap that exceeds 1 gives back what another
 * took too much, so it is set against that one. What the lens clips and what the clipped beam's form gains are one matter;
 * any other gain belongs to the worst of the overlap.
 */
export function netTransmissions(ledger: readonly Pick<Entry, 'id' | 'group' | 'transmission'>[]): number[] {
  const net = ledger.map(({ transmission }) => transmission);
  const giveTo = (i: number, gain: number): number => {
    const taken = Math.min(gain, 1 / net[i]!);
    net[i] = net[i]! * taken;
    return gain / taken;
  };
  ledger.forEach(({ id, group }, i) => {
    if (group !== 'overlap' || net[i]! <= 1) return;
    let gain = net[i]!;
    net[i] = 1;
    const clip = id === 'aberration' ? ledger.findIndex((one) => one.id === 'lens-clip') : -1;
    if (clip >= 0 && net[clip]! > 0) gain = giveTo(clip, gain);
    const causes = [...net.keys()]
      .filter((k) => ledger[k]!.group === 'overlap' && net[k]! < 1 && net[k]! > 0)
      .sort((a, b) => net[a]! - net[b]!);
    for (const cause of causes) gain = giveTo(cause, gain);
    // a gain that nothing asked for, if there is one
    net[i] = gain;
  });
  return net;
}
