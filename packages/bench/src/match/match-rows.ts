import { digitsFor, figure, intervalText } from '../ledger/figures.ts';
import type { Match, MatchedInterval, MatchedPair, MatchPurpose, PlugInBarrel } from './matched.ts';
import { otherModes } from './other-modes.ts';
import { reasonLine } from './reason.ts';
import { usableFirst } from './usable-first.ts';

/** A figure and its interval in words, and what it sorts by. */
export interface MatchFigure {
  readonly text: string;
  /** `61 to 77 %`; empty where it would not show. */
  readonly interval: string;
  /** SI. */
  readonly value: number;
}

/** One combination of a match, told. */
export interface MatchRow {
  readonly laser: string;
  /** As the drawer calls it; `none`: no lens. */
  readonly collimator: string;
  readonly fibre: string;
  /** From 1, the best first, over all lasers. */
  readonly place: number;
  readonly share: MatchFigure;
  readonly power: MatchFigure;
  /** The one thing that keeps it from being better, with what it costs. */
  readonly reason: string;
  /** How much of what is guided LP01 is, where the ranking goes by LP01 and others come with it. */
  readonly otherModes: string | null;
  readonly connector: PlugInBarrel;
  readonly connectorNote: string | null;
}

/** A match as rows for a table or a map, best first. */
export function matchRows({ pairs, purpose }: Pick<Match, 'pairs' | 'purpose'>): readonly MatchRow[] {
  return pairs.map((pair, index) => rowOf(pair, index + 1, purpose));
}

/** A pair in words; `place` counts from 1. */
export function rowOf(pair: MatchedPair, place: number, purpose: MatchPurpose): MatchRow {
  const { laser, collimator, fibre, score, power, reason, connector, connectorNote } = pair;
  return {
    laser,
    collimator,
    fibre,
    place,
    share: told(score, 'fraction'),
    power: told(power, 'power'),
    reason: reasonLine(reason),
    otherModes: otherModes(pair, purpose),
    connector,
    connectorNote,
  };
}

function told(interval: MatchedInterval, dimension: 'fraction' | 'power'): MatchFigure {
  return {
    text: figure(interval.value, dimension, digitsFor(interval, dimension)),
    interval: intervalText(interval, dimension) ?? '',
    value: interval.value,
  };
}

/** By what a table of combinations can be sorted. */
export const matchColumns = ['laser', 'collimator', 'fibre', 'share', 'power', 'reason'] as const;
export type MatchColumn = (typeof matchColumns)[number];

/** Rows in another order; by light, what must not meet stays last. Where two are alike the better one stays first. */
export function sortedRows(
  rows: readonly MatchRow[],
  column: MatchColumn,
  descending: boolean,
): readonly MatchRow[] {
  const sign = descending ? -1 : 1;
  const byLight = column === 'share' || column === 'power';
  return [...rows].sort(
    (a, b) => (byLight ? usableFirst(a, b) : 0) || sign * compare(a, b, column) || a.place - b.place,
  );
}

function compare(a: MatchRow, b: MatchRow, column: MatchColumn): number {
  switch (column) {
    case 'share':
    case 'power':
      return a[column].value - b[column].value;
    case 'laser':
    case 'collimator':
    case 'fibre':
    case 'reason':
      return a[column].localeCompare(b[column], 'en', { numeric: true });
  }
}

/** Lens by fibre for one laser; a cell is `null` where the combination was left out. */
export interface MatchMap {
  readonly collimators: readonly string[];
  readonly fibres: readonly string[];
  readonly cells: readonly (readonly (MatchRow | null)[])[];
}

/** The combinations of one laser as a map: lenses down, fibres across, each in the order of its best combination. */
export function matchMap(rows: readonly MatchRow[], laser: string): MatchMap {
  const own = rows.filter((row) => row.laser === laser);
  const collimators = [...new Set(own.map(({ collimator }) => collimator))];
  const fibres = [...new Set(own.map(({ fibre }) => fibre))];
  const cells = collimators.map((collimator) =>
    fibres.map((fibre) => own.find((row) => row.collimator === collimator && row.fibre === fibre) ?? null),
  );
  return { collimators, fibres, cells };
}
