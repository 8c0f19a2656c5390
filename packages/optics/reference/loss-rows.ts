/** The rows of loss-and-glass.json and beampath.json as the tests of loss/ read them. */
import beampath from './beampath.json' with { type: 'json' };
import lossAndGlass from './loss-and-glass.json' with { type: 'json' };

export type Cell = number | string | boolean | null | readonly Cell[];
interface Allowed {
  readonly rel?: number;
  readonly abs?: number;
}
export interface LossRow {
  readonly id: string;
  /** For the test's title: the row, and who says so. */
  readonly title: string;
  readonly topic: string;
  readonly inputs: Readonly<Record<string, number>>;
  readonly expected: Readonly<Record<string, Cell>>;
  readonly tolerance: Allowed | Readonly<Record<string, Allowed>>;
}

interface StoredCase extends Omit<LossRow, 'title'> {
  readonly source: { readonly kind: string; readonly cite: string };
}
interface StoredBeampath extends Omit<LossRow, 'title' | 'topic' | 'tolerance'> {
  readonly kind: string;
  readonly source: string;
}

export const lossRows: readonly LossRow[] = [
  ...(lossAndGlass.cases as unknown as readonly StoredCase[]).map((row) => ({
    ...row,
    title: `${row.id} (${row.source.kind}: ${brief(row.source.cite)})`,
  })),
  ...(beampath.cases as unknown as readonly StoredBeampath[]).map((row) => ({
    ...row,
    topic: row.kind,
    // The rows themselves are good to 1e-14; 1e-9 leaves room for the differences of indices a few 1e-5 apart.
    tolerance: { rel: 1e-9, abs: 1e-15 },
    title: `${row.id} (${brief(row.source)})`,
  })),
];

/** The first statement of a citation. */
function brief(cite: string): string {
  return cite.split(';')[0]!;
}

export function lossRow(id: string): LossRow {
  const row = lossRows.find((candidate) => candidate.id === id);
  if (row === undefined) throw new Error(`no row ${id}`);
  return row;
}

/** What disagrees with the row, in words; every expected cell must be answered. */
export function misses(
  row: Pick<LossRow, 'expected' | 'tolerance'>,
  actual: Readonly<Record<string, Cell>>,
): readonly string[] {
  const names = new Set([...Object.keys(row.expected), ...Object.keys(actual)]);
  return [...names].flatMap((name) => {
    const own = (row.tolerance as Readonly<Record<string, Allowed>>)[name];
    const allowed = typeof own === 'object' ? own : (row.tolerance as Allowed);
    const [want, got] = [row.expected[name], actual[name]];
    return want !== undefined && got !== undefined && agrees(got, want, allowed)
      ? []
      : [
          `${name}: ${JSON.stringify(got)} instead of ${JSON.stringify(want)} within ${JSON.stringify(allowed)}`,
        ];
  });
}

function agrees(got: Cell, want: Cell, allowed: Allowed): boolean {
  if (Array.isArray(want)) {
    return (
      Array.isArray(got) &&
      got.length === want.length &&
      want.every((cell, i) => agrees(got[i], cell, allowed))
    );
  }
  if (typeof want !== 'number' || typeof got !== 'number') return got === want;
  const { rel = 0, abs = 0 } = allowed;
  return Math.abs(got - want) <= Math.max(rel * Math.abs(want), typeof abs === 'number' ? abs : 0);
}
