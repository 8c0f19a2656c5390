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

/**
 * The losses of a ledger as one judges them: an entry of the overlap that exceeds 1 gives back what another took too
 * much, so it is set against that one. What the lens clips and what the clipped beam's form gains are one matter; any
 * other gain belongs to the worst of the overlap. The product of all stays what it is.
 */
export function netLosses(ledger: readonly Entry[]): readonly NetLoss[] {
  const losses = ledger.map(({ id, group, label, transmission }) => ({
    id,
    group,
    label,
    transmission,
    alone: transmission,
  }));
  const giveTo = (loss: (typeof losses)[number], gain: number): number => {
    const taken = Math.min(gain, 1 / loss.transmission);
    loss.transmission *= taken;
    return gain / taken;
  };
  const clip = losses.find(({ id }) => id === 'lens-clip');
  for (const entry of losses) {
    if (entry.group !== 'overlap' || entry.transmission <= 1) continue;
    let gain = entry.transmission;
    entry.transmission = 1;
    if (entry.id === 'aberration' && clip !== undefined && clip.transmission > 0) gain = giveTo(clip, gain);
    const causes = losses
      .filter(({ group, transmission }) => group === 'overlap' && transmission < 1 && transmission > 0)
      .sort((a, b) => a.transmission - b.transmission);
    for (const cause of causes) gain = giveTo(cause, gain);
    // a gain that nothing asked for, if there is one
    entry.transmission = gain;
  }
  return losses.map(({ id, label, transmission, alone }) => ({ id, label, transmission, alone }));
}
