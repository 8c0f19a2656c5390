import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readLine } from './read-line.ts';
import { readLog } from './read-log.ts';
import { recogniseLines } from './recognise-lines.ts';

// Lines of invented devices in the forms that hobby boards and meters print; common practice, no source. The expected
// readings are what a person reads off the line.
const devices: readonly {
  readonly says: string;
  readonly lines: readonly string[];
  readonly readings: readonly number[];
}[] = [
  { says: 'a name, a unit', lines: ['P=1.23e-3 W', 'P=1.25e-3 W'], readings: [1.23e-3, 1.25e-3] },
  {
    says: 'a time of day, a decimal comma, the unit apart',
    lines: ['12:01;0,532;mW', '12:02;0,541;mW', '12:03;0,540;mW'],
    readings: [0.532e-3, 0.541e-3, 0.54e-3],
  },
  { says: 'bare numbers', lines: ['512', '517', '515'], readings: [512, 517, 515] },
  { says: 'bare numbers with a decimal comma', lines: ['0,532', '0,541'], readings: [0.532, 0.541] },
  {
    says: 'a counter and tabs',
    lines: ['1\t0.51\t23.1', '2\t0.47\t23.1', '3\t0.55\t23.1', '4\t0.52\t23.1'],
    readings: [0.51, 0.47, 0.55, 0.52],
  },
  {
    says: 'JSON',
    lines: ['{"t":1000,"p":0.00123,"unit":"W"}', '{"t":1100,"p":0.0012,"unit":"W"}'],
    readings: [1.23e-3, 1.2e-3],
  },
  {
    says: 'JSON with the unit in the name',
    lines: ['{"ms": 10, "power_mW": 1.5}', '{"ms": 20, "power_mW": 1.25}'],
    readings: [1.5e-3, 1.25e-3],
  },
  {
    says: 'several quantities with units between spaces',
    lines: ['T 23.1 C P -3 dBm', 'T 23.1 C P -10 dBm'],
    // 10 dBm is a factor of ten from 1 mW; −3 dBm is 10^−0.3 mW
    readings: [0.501187e-3, 0.1e-3],
  },
  {
    says: 'columns behind commas',
    lines: ['0.1, 3.30, 1.21', '0.2, 3.30, 1.19', '0.3, 3.30, 1.24'],
    readings: [1.21, 1.19, 1.24],
  },
  {
    says: 'ranges that change',
    lines: ['1.02 µW', '0.98 µW', '990 nW', '1.5 uW'],
    readings: [1.02e-6, 0.98e-6, 0.99e-6, 1.5e-6],
  },
  { says: 'a reading below nothing', lines: ['V: -0.3 mV', 'V: 0.1 mV'], readings: [-0.3e-3, 0.1e-3] },
];

describe('a line format is recognised from a sample', () => {
  for (const { says, lines, readings } of devices) {
    test(says, () => {
      const format = recogniseLines(lines);
      expect(format).not.toBeNull();
      lines.forEach((line, index) => {
        const read = readLine(line, format!);
        expect(read?.kind).toBe('value');
        const expected = readings[index]!;
        // six digits, as many as are written above
        expect(read?.kind === 'value' ? read.value / expected : 0).toBeCloseTo(1, 5);
      });
    });
  }

  test('words are no readings', () => {
    expect(recogniseLines(['ready', 'hello 12:30', ''])).toBeNull();
    expect(recogniseLines([])).toBeNull();
  });

  test('a column that the owner chose is read, whatever was guessed', () => {
    const format = { separator: 'semicolon', decimal: 'comma', column: 1, unit: 'µW' } as const;
    expect(readLine('9;0,5;8', format)).toEqual({ kind: 'value', value: 0.5e-6 });
    expect(readLine('9', format)).toBeNull();
    expect(readLine('9;x;8', format)).toBeNull();
  });

  test('too much for the meter is told apart from no reading', () => {
    const format = { separator: 'space', decimal: 'point', column: 0, unit: 'mW' } as const;
    expect(readLine('OL mW', format)).toEqual({ kind: 'over' });
    expect(readLine('9.9E37', format)).toEqual({ kind: 'over' });
    expect(readLine('9.91E37', format)).toEqual({ kind: 'nothing' });
  });

  test('nothing that a device sends throws, and no reading is not a number', () => {
    const piece = fc.constantFrom(
      'P=',
      '1.2',
      '-0,5',
      ' mW',
      ';',
      '\t',
      ',',
      ' ',
      '{"a":',
      '}',
      'OL',
      'e5',
      '\u0000',
      'µ',
    );
    const line = fc.oneof(
      fc.array(piece, { maxLength: 12 }).map((pieces) => pieces.join('')),
      fc.string({ unit: 'binary', maxLength: 60 }),
    );
    fc.assert(
      fc.property(fc.array(line, { maxLength: 8 }), (lines) => {
        const format = recogniseLines(lines);
        if (format === null) return;
        for (const one of lines) {
          const read = readLine(one, format);
          if (read?.kind === 'value') expect(Number.isFinite(read.value)).toBe(true);
        }
      }),
    );
  });
});

describe('a log', () => {
  test('has its own clock, and a heading does no harm', () => {
    expect(readLog('time,power_mW\n10,1.5\n10.5,1.25\n12,OL\n', 'W')).toEqual([
      { after: 0, value: 1.5e-3 },
      { after: 0.5, value: 1.25e-3 },
      { after: 2, value: null },
    ]);
  });

  test('a unit of time in the heading is heeded, and the figures come out as written', () => {
    const after = (heading: string) => readLog(`${heading},power_µW\n250,2.5\n500,7.5\n`, 'W')[1]?.after;
    expect(after('time_ms')).toBe(0.25);
    expect(after('t (µs)')).toBe(0.25e-3);
    expect(after('time_s')).toBe(250);
    // the doubles nearest to the decimals that were written
    expect(readLog('time_ms,power_µW\n250,2.5\n500,7.5\n', 'W').map(({ value }) => value)).toEqual([
      2.5e-6, 7.5e-6,
    ]);
  });

  test('without times comes at an even pace', () => {
    expect(readLog('5\n7\n6\n', 'counts').map(({ value }) => value)).toEqual([5, 7, 6]);
    expect(readLog('5\n7\n6\n', 'counts')[2]?.after).toBeCloseTo(0.2, 12); // a rounding of doubles
  });

  test('without a reading is refused with how to write one', () => {
    expect(() => readLog('nothing\nto see\n', 'W')).toThrow('no column of it holds readings');
    // the mend works to the letter
    expect(readLog('0.10;1.25e-3', 'W')).toHaveLength(1);
  });
});
