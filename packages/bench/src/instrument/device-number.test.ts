import { expect, test } from 'vitest';
import { numberOfAnswer } from './device-number.ts';

// IEEE 488.2-1992, 8.7: decimal numeric response data; SCPI-99, volume 1, 7.2.1: infinity and not a number. From memory.
const answers: readonly (readonly [string, ReturnType<typeof numberOfAnswer>])[] = [
  ['+1', { kind: 'value', value: 1 }], // NR1
  ['-23\r', { kind: 'value', value: -23 }],
  ['1.250', { kind: 'value', value: 1.25 }], // NR2
  ['-.5', { kind: 'value', value: -0.5 }],
  ['+1.23000E-03', { kind: 'value', value: 0.00123 }], // NR3
  ['2.5e-6,0,1', { kind: 'value', value: 2.5e-6 }],
  ['9.9E37', { kind: 'over' }],
  ['+9.90000000E+37', { kind: 'over' }],
  ['-9.9E37', { kind: 'nothing' }],
  ['9.91E37', { kind: 'nothing' }],
  ['INVENTED,METER,0,1', null],
  ['', null],
  ['-', null],
  ['1.2.3', null],
];

for (const [answer, expected] of answers) {
  test(`\`${answer.trim()}\` is ${expected === null ? 'no number' : JSON.stringify(expected)}`, () => {
    expect(numberOfAnswer(answer)).toEqual(expected);
  });
}
