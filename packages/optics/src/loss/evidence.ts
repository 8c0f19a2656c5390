/**
 * How far a printed number may be trusted.
 *
 * - `read`: the value stood in the source named
 * - `secondary`: it stood in somebody else's reproduction of the source named
 * - `from memory`: remembered, not looked up
 * - `common practice`: what benches do; nobody stands behind it
 *
 * The last two are never shown as a published limit.
 */
export type Evidence = 'read' | 'secondary' | 'from memory' | 'common practice';

/** Where a number of a table comes from. Every row of every table in this folder carries one. */
export interface Provenance {
  readonly source: string;
  readonly evidence: Evidence;
}
