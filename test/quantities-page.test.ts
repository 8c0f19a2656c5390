import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type Dimension, readQuantity } from '../packages/bench/src/index.ts';

/** Rows of the tables of docs/quantities.md under a heading, cell by cell, without the head. */
function rowsUnder(heading: string): string[][] {
  const page = readFileSync(new URL('../docs/quantities.md', import.meta.url), 'utf8');
  const part = page.split(`## ${heading}\n`)[1]!.split('\n## ')[0]!;
  return part
    .split('\n')
    .filter((line) => line.startsWith('|'))
    .slice(2)
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

const written = (cell: string) => cell.replaceAll('`', '');

test.each(rowsUnder('Numbers and units'))('%s %s is %s', (kind, cell, is) => {
  const read = readQuantity(written(cell!), kind as Dimension);
  // the page shows at most sixteen digits
  expect(read.ok && Math.abs(read.value / Number.parseFloat(is!) - 1)).toBeLessThan(1e-15);
});

test.each(rowsUnder('Doubt'))('%s %s: %s, %s', (kind, cell, _means, uncertainty) => {
  const read = readQuantity(written(cell!), kind as Dimension);
  expect(read.ok && Math.abs(read.uncertainty! / Number.parseFloat(uncertainty!) - 1)).toBeLessThan(1e-12); // rounding
});

test.each(rowsUnder('What is refused'))('%s %s is refused, because %s', (kind, cell) => {
  const read = readQuantity(written(cell!), kind as Dimension);
  expect(read.ok).toBe(false);
});
