import { expect, test } from 'vitest';
import { readDrawer } from '../drawer/read-drawer.ts';
import { observingLoftDrawer } from '../example/example-texts.ts';
import { match } from './match.ts';
import { matchMap, matchRows, sortedRows } from './match-rows.ts';

const drawer = readDrawer([{ text: observingLoftDrawer, file: 'drawer' }]);
const matched = match(drawer, { purpose: 'total', laser: 'green module' });
const rows = matchRows(matched);

test('every combination has a row, the best first, told with its range and one reason', () => {
  expect(rows).toHaveLength(matched.pairs.length);
  expect(rows.map(({ place }) => place)).toEqual(rows.map((_, index) => index + 1));
  for (const { share, power, reason } of rows) {
    expect(share.text).toMatch(/%$|^next to nothing|^nothing|dB/u);
    expect(power.text).not.toBe('');
    expect(reason).toMatch(/dB|nothing|cost/u);
  }
});

test('sorting loses no row, and turns round', () => {
  for (const column of ['laser', 'collimator', 'fibre', 'share', 'power', 'reason'] as const) {
    const up = sortedRows(rows, column, false);
    expect(new Set(up)).toEqual(new Set(rows));
    if (column === 'share') {
      const values = up
        .filter(({ connector }) => connector !== 'must not meet')
        .map(({ share }) => share.value);
      expect(values).toEqual([...values].sort((a, b) => a - b));
      expect(sortedRows(rows, column, true)[0]).toBe(rows[0]);
    }
  }
});

test('the map has a lens in every line and a fibre in every column', () => {
  const map = matchMap(rows, 'green module');
  expect(map.collimators).toHaveLength(drawer.collimators.length);
  expect(map.fibres).toHaveLength(drawer.fibres.length);
  expect(map.cells.flat().filter((cell) => cell !== null)).toHaveLength(rows.length);
  map.cells.forEach((line, i) => {
    line.forEach((cell, j) => {
      if (cell !== null) expect([cell.collimator, cell.fibre]).toEqual([map.collimators[i], map.fibres[j]]);
    });
  });
  // lenses and fibres stand in the order of their best
  expect(map.cells[0]?.[0]?.place).toBe(1);
});

test('by light, what must not meet stands behind all that may, either way round', () => {
  const [first, second] = [rows[0]!, rows[1]!];
  const angled = { ...first, connector: 'must not meet' } as const;
  const usable = { ...second, connector: 'fits' } as const;
  for (const column of ['share', 'power'] as const)
    for (const descending of [true, false])
      expect(sortedRows([angled, usable], column, descending)).toEqual([usable, angled]);
});

test('a ranking by LP01 tells its share of what is guided, where others come with it, and no other ranking does', () => {
  for (const { otherModes } of rows) expect(otherModes).toBeNull();
  const byLp01 = match(drawer, { purpose: 'lp01', laser: 'green module' });
  for (const [i, { otherModes }] of matchRows(byLp01).entries()) {
    const { guided, fundamental } = byLp01.pairs[i]!;
    // 98 %: the rule that stands beside the table
    expect(otherModes !== null, `${guided} ${fundamental}`).toBe(guided > 0 && fundamental < 0.98 * guided);
  }
  expect(
    matchRows(byLp01).some(({ otherModes }) =>
      /^LP01 is \d+(\.\d+)? % of what is guided$/u.test(otherModes ?? ''),
    ),
  ).toBe(true);
});
