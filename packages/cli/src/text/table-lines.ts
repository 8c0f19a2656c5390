import { type Cell, printable, type Table } from '@coreward/bench';
import { displayWidth } from './display-width.ts';
import { wrap, wrapHanging } from './wrap.ts';

const margin = '  ';
const gap = '  ';
const barWidth = 5;
/** The first column is never squeezed below this. */
const leastLabel = 14;

/**
 * A table as lines of at most `width` columns. The first column gives way: it is wrapped where the others leave it too
 * little room. Bars are left out where there is none for them.
 */
export function tableLines(table: Table, width: number): readonly string[] {
  const withBars = measure(table, width);
  const fits = withBars.total <= width;
  const shown = fits ? table : withoutBars(table);
  return draw(shown, fits ? withBars : measure(shown, width));
}

interface Measures {
  readonly widths: readonly number[];
  readonly total: number;
}

function measure({ columns, rows }: Table, width: number): Measures {
  const natural = columns.map(({ heading }, i) =>
    Math.max(
      ...heading.split('\n').map(displayWidth),
      ...rows.map((row) => (row.kind === 'cells' ? cellWidth(row.cells[i] ?? '') : 0)),
    ),
  );
  const [label = 0, ...others] = natural;
  const taken = margin.length + others.reduce((sum, one) => sum + gap.length + one, 0);
  const first = Math.max(Math.min(leastLabel, label), Math.min(label, width - taken));
  return { widths: [first, ...others], total: taken + first };
}

const cellWidth = (cell: Cell): number => (typeof cell === 'string' ? displayWidth(cell) : barWidth);

function withoutBars({ columns, rows, ...rest }: Table): Table {
  const kept = columns.map(
    (_, i) => !rows.some((row) => row.kind === 'cells' && typeof row.cells[i] === 'object'),
  );
  return {
    ...rest,
    columns: columns.filter((_, i) => kept[i]),
    rows: rows.map((row) =>
      row.kind === 'cells' ? { ...row, cells: row.cells.filter((_, i) => kept[i]) } : row,
    ),
  };
}

function draw({ columns, rows }: Table, { widths, total }: Measures): readonly string[] {
  const lines: string[] = [];
  const put = (cells: readonly Cell[]) => {
    const [label = '', ...others] = cells;
    const labels = typeof label === 'string' ? labelLines(label, widths[0] ?? 0) : [];
    for (let i = 0; i < Math.max(1, labels.length); i += 1) {
      // figures stand on the last line of a long label, where the eye arrives
      const last = i >= labels.length - 1;
      const row = [labels[i] ?? '', ...others.map((cell) => (last ? cell : ''))];
      lines.push(
        margin + row.map((cell, j) => padded(cell, widths[j] ?? 0, columns[j]?.align ?? 'left')).join(gap),
      );
    }
  };
  const headings = columns.map(({ heading }) => heading.split('\n'));
  const height = Math.max(...headings.map((lines) => lines.length));
  for (let i = 0; i < height; i += 1) {
    const words = headings.map((lines) => lines[i - height + lines.length] ?? '');
    if (words.some((word) => word !== '')) put(words);
  }
  for (const row of rows) {
    switch (row.kind) {
      case 'cells':
        put(row.cells);
        break;
      case 'heading':
        for (const line of wrap(row.text, total - margin.length)) lines.push(margin + line);
        break;
      case 'rule':
        lines.push(margin + '─'.repeat(total - margin.length));
        break;
    }
  }
  return lines.map((line) => line.trimEnd());
}

/** A label keeps the indentation it has. */
function labelLines(label: string, width: number): readonly string[] {
  const text = label.trimStart();
  return wrapHanging(printable(text, 400), ' '.repeat(label.length - text.length), width);
}

function padded(cell: Cell, width: number, align: 'left' | 'right'): string {
  if (typeof cell === 'object') return bar(cell.bar);
  const space = ' '.repeat(Math.max(0, width - displayWidth(cell)));
  return align === 'left' ? cell + space : space + cell;
}

/** In steps of half a character; anything above nothing shows at least a trace. */
function bar(share: number): string {
  const halves = Math.min(2 * barWidth, share > 0 ? Math.max(1, Math.round(share * 2 * barWidth)) : 0);
  return ('━'.repeat(halves >> 1) + (halves % 2 === 1 ? '╸' : '')).padEnd(barWidth);
}
