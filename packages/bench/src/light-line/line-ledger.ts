import type { LedgerEntry } from '../forecast/expected.ts';
import { type LedgerLine, ledgerLine } from '../ledger/ledger-lines.ts';
import type { LinePart } from './line-parts.ts';

/** The losses at one part of the line, ready to be read. */
export interface PartLedger {
  readonly part: LinePart;
  /** What costs something. */
  readonly steps: readonly LedgerLine[];
  /** What was counted and takes nothing here. */
  readonly free: readonly LedgerLine[];
}

/**
 * The ledger part by part, each loss where it happens.
 *
 * @param laserPower W
 */
export function lineLedger(parts: readonly LinePart[], laserPower: number): readonly PartLedger[] {
  return parts.map((part) => {
    let left = part.arriving;
    const lines = part.losses.map((entry) => {
      left *= entry.transmission;
      return ledgerLine(entry, left, laserPower);
    });
    return {
      part,
      steps: lines.filter(({ costsNothing }) => !costsNothing),
      free: lines.filter(({ costsNothing }) => costsNothing),
    };
  });
}

/**
 * A ledger at stated values with the ranges of a forecast of much the same launch, where the two have the same entries.
 *
 * @param forecast its ledger
 */
export function withRanges(
  stated: readonly LedgerEntry[],
  forecast: readonly LedgerEntry[],
): readonly LedgerEntry[] {
  const alike = stated.length === forecast.length && stated.every(({ id }, i) => forecast[i]!.id === id);
  if (!alike) return stated;
  return stated.map((entry, i) => {
    const { low, high, left } = forecast[i]!;
    return { ...entry, low, high, left };
  });
}

/** How bright the light is drawn with a share of it left: 1 for all of it; what is left faintly is still seen. */
export const brightness = (left: number): number => 0.05 + 0.95 * Math.max(0, Math.min(1, left)) ** 0.7;
