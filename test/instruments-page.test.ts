import { readFileSync } from 'node:fs';
import { type LineFormat, readLine } from '@coreward/bench';
import { expect, test } from 'vitest';

const page = readFileSync(new URL('../docs/instruments.md', import.meta.url), 'utf8');
const [, block = ''] = /```text\n([\s\S]*?)```/u.exec(page) ?? [];

/** What a person reads off each line of the page, SI, and how they take it apart; common practice, no source. */
const lines: readonly (readonly [line: string, format: LineFormat, reading: number])[] = [
  ['512', { separator: 'none', decimal: 'point', column: 0, unit: 'counts' }, 512],
  ['1.25e-3', { separator: 'none', decimal: 'point', column: 0, unit: 'V' }, 1.25e-3],
  ['12:01;0,532;mW', { separator: 'semicolon', decimal: 'comma', column: 1, unit: 'W' }, 0.532e-3],
  ['P=1.23e-3 W', { separator: 'none', decimal: 'point', column: 0, unit: 'mW' }, 1.23e-3],
  ['t=17, ref=5.0, light=2.013', { separator: 'comma', decimal: 'point', column: 2, unit: 'counts' }, 2.013],
  ['{"t": 12, "power_uW": 3.1}', { separator: 'comma', decimal: 'point', column: 1, unit: 'W' }, 3.1e-6],
];

test('every line that the page of instruments shows is read as it says', () => {
  expect(block.trim().split('\n')).toEqual(lines.map(([line]) => line));
  for (const [line, format, value] of lines) {
    // dividing by a power of ten rounds once, half a unit in the sixteenth digit
    const said = readLine(line, format);
    expect(said?.kind === 'value' ? said.value : null, line).toBeCloseTo(value, 15);
  }
});
