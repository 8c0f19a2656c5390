import { describe, expect, test } from 'vitest';
import type { Dimension } from './dimension.ts';
import type { QuantityOptions } from './mend.ts';
import { readQuantity } from './read-quantity.ts';

interface Row {
  readonly text: string;
  readonly as?: Dimension;
  readonly options?: QuantityOptions;
  readonly what: string;
  readonly mend: string;
}

// What a person at the bench needs to read. Chosen here: there is no outside source for a wording.
const rows: readonly Row[] = [
  { text: '6.2', what: '`6.2` has no unit', mend: 'Write a length, such as `6.2 mm`.' },
  { text: '6.2 nW', what: '`6.2 nW` is a power, not a length', mend: 'Write a length, such as `6.2 mm`.' },
  { text: '5 %', what: '`5 %` is a percentage, not a length', mend: 'Write a length, such as `5 mm`.' },
  { text: '1,5 mm', what: '`1,5 mm` has a comma in its number', mend: 'Write `1.5 mm`.' },
  {
    text: '1,550 nm',
    what: '`1,550 nm` has a comma in its number',
    mend: 'Write `1.550 nm`, or `1550 nm` if the comma marks thousands.',
  },
  { text: '0,850 mm', what: '`0,850 mm` has a comma in its number', mend: 'Write `0.850 mm`.' },
  {
    text: '1,550 nm',
    options: { min: 200e-9, max: 12e-6 },
    what: '`1,550 nm` has a comma in its number',
    mend: 'Write `1550 nm`.',
  },
  { text: '6,2', what: '`6,2` has a comma in its number', mend: 'Write a length, such as `6.2 mm`.' },
  { text: '1 550 nm', what: '`1 550 nm` has a gap in its number', mend: 'Write `1550 nm`.' },
  { text: '1\u202f550 nm', what: '`1 550 nm` has a gap in its number', mend: 'Write `1550 nm`.' },
  { text: '4.5 mm ± 0.1', what: 'the uncertainty `0.1` has no unit', mend: 'Write `4.5 mm ± 0.1 mm`.' },
  { text: '4.5 ± 0.1 mm', what: '`4.5` has no unit', mend: 'Write `4.5 mm ± 0.1 mm`.' },
  {
    text: '(4.5 ± 0.1) mm',
    what: '`(4.5` does not begin with a number',
    mend: 'Write `4.5 mm ± 0.1 mm`.',
  },
  {
    text: '4.50(12) mm',
    what: '`4.50(12) mm` goes on after its number with something that is no unit',
    mend: 'Write `4.50 mm ± 0.12 mm`.',
  },
  { text: '1 to 2 mm', what: '`to` is no unit known here', mend: 'Write `1.5 mm within 0.5 mm`.' },
  { text: '6.2 MM', what: '`MM` is no unit known here', mend: 'Write `6.2 mm`.' },
  { text: '6.2 Mm', what: '`Mm` is no unit known here', mend: 'Write `6.2 mm`.' },
  { text: '8 micron', what: '`micron` is no unit known here', mend: 'Write `8 µm`.' },
  { text: '1/4 inches', what: '`inches` is no unit known here', mend: 'Write `1/4 in`.' },
  { text: '6.2 millimetres', what: '`millimetres` is no unit known here', mend: 'Write `6.2 mm`.' },
  { text: '12 MW', as: 'power', what: '`MW` is no unit known here', mend: 'Write `12 mW`.' },
  { text: '3 DB/KM', as: 'attenuation', what: '`DB` is no unit known here', mend: 'Write `3 dB/km`.' },
  { text: '20 C', as: 'temperature', what: '`C` is no unit known here', mend: 'Write `20 °C`.' },
  { text: '8"', as: 'angle', what: '`8"` is a length, not an angle', mend: 'Write `8 arcsec`.' },
  { text: '80', as: 'screwPitch', what: '`80` has no unit', mend: 'Write a screw pitch, such as `80 tpi`.' },
  {
    text: 'M6',
    as: 'screwPitch',
    what: '`M6` does not say how far a turn goes',
    mend: 'Write a screw pitch, such as `M6x0.25`.',
  },
  {
    text: '1064',
    options: { example: '635 nm' },
    what: '`1064` has no unit',
    mend: 'Write a length, such as `1064 nm`.',
  },
  {
    text: '-6.2 mm',
    options: { positive: true },
    what: '`-6.2 mm` is not above zero',
    mend: 'Write a length above zero, such as `6.2 mm`.',
  },
  {
    text: '0 mm',
    options: { positive: true },
    what: '`0 mm` is not above zero',
    mend: 'Write a length above zero, such as `6.2 mm`.',
  },
  {
    text: '-0.1 mm',
    options: { positive: 'orZero' },
    what: '`-0.1 mm` is below zero',
    mend: 'Write a length of zero or more, such as `6.2 mm`.',
  },
  // a slip of the unit, never the end of the range
  {
    text: '520 µm',
    options: { min: 200e-9, max: 12e-6 },
    what: '`520 µm` is more than `12 µm`',
    mend: 'Write `520 nm`.',
  },
  {
    text: '520 µm ± 2 µm',
    options: { min: 200e-9, max: 12e-6 },
    what: '`520 µm` is more than `12 µm`',
    mend: 'Write `520 nm ± 2 nm`.',
  },
  {
    text: '0.6 µm ± 9 %',
    options: { min: 1e-5, max: 1 },
    what: '`0.6 µm` is less than `10 µm`',
    mend: 'Write `0.6 mm ± 9 %`.',
  },
  {
    text: '120 nm',
    options: { min: 200e-9, max: 12e-6, example: '520 nm' },
    what: '`120 nm` is less than `200 nm`',
    mend: 'Write a length from 200 nm to 12 µm, such as `520 nm`.',
  },
  {
    text: '1.2',
    as: 'number',
    options: { min: 0.01, max: 1, example: '0.13' },
    what: '`1.2` is more than `1`',
    mend: 'Write a bare number from 0.01 to 1, such as `0.13`.',
  },
  {
    text: '0.9',
    as: 'number',
    options: { min: 1 },
    what: '`0.9` is less than `1`',
    mend: 'Write a bare number of 1 or more, such as `1.15`.',
  },
  {
    text: '20000 W',
    as: 'power',
    options: { positive: true, max: 1e4 },
    what: '`20000 W` is more than `10 kW`',
    mend: 'Write `20000 mW`.',
  },
  {
    text: '1e-300 W',
    as: 'power',
    what: '`1e-300 W` is too small to compute with',
    mend: 'Write a power, such as `12 mW`.',
  },
  {
    text: '50 mW ± 10',
    as: 'power',
    what: 'the uncertainty `10` has no unit',
    mend: 'Write `50 mW ± 10 %`, or `50 mW ± 10 mW`.',
  },
  // ± 10 mW would be more than 5 mW itself
  {
    text: '5 mW ± 10',
    as: 'power',
    options: { positive: true },
    what: 'the uncertainty `10` has no unit',
    mend: 'Write `5 mW ± 10 %`.',
  },
  { text: '97', as: 'fraction', what: '`97` is more than `100 %`', mend: 'Write `97 %`.' },
  { text: '', what: 'nothing is written here', mend: 'Write a length, such as `6.2 mm`.' },
  {
    text: 'NaN mm',
    what: '`NaN mm` does not begin with a number',
    mend: 'Write a length, such as `6.2 mm`.',
  },
  {
    text: 'Infinity',
    what: '`Infinity` does not begin with a number',
    mend: 'Write a length, such as `6.2 mm`.',
  },
  {
    text: '1e400 mm',
    what: '`1e400 mm` is too large to compute with',
    mend: 'Write a length, such as `6.2 mm`.',
  },
  {
    text: '1e-400 mm',
    what: '`1e-400 mm` is too small to compute with',
    mend: 'Write a length, such as `6.2 mm`.',
  },
  {
    text: '1 mm ± 0.1 mm ± 5 %',
    what: '`1 mm ± 0.1 mm ± 5 %` has two uncertainties',
    mend: 'Write `1 mm ± 0.1 mm`.',
  },
  {
    text: '1 mm ± -0.1 mm',
    what: 'the uncertainty `-0.1 mm` is below zero',
    mend: 'Write `1 mm ± 0.1 mm`.',
  },
  { text: '1 mm ± 0.3 nW', what: '`0.3 nW` is a power, not a length', mend: 'Write `1 mm ± 0.3 mm`.' },
  { text: '1 mm ±', what: 'nothing stands behind `±`', mend: 'Write `1 mm ± 10 %`.' },
  { text: '± 1 mm', what: 'nothing stands before `±`', mend: 'Write a length, such as `6.2 mm`.' },
  { text: '0 mm ± 5 %', what: 'a share of `0 mm` is nothing', mend: 'Write `0 mm ± 0.1 mm`.' },
  {
    text: '20 °C ± 5 %',
    as: 'temperature',
    what: 'a share of `20 °C` depends on where zero is',
    mend: 'Write `20 °C ± 1 °C`.',
  },
  {
    text: '-3 dBm ± 0.5 dBm',
    as: 'power',
    what: '`dBm` is no unit known here',
    mend: 'Write `-3 dBm ± 0.5 dB`.',
  },
  {
    text: '1 mm within 1.5 mm',
    options: { positive: true },
    what: 'the limits of `1 mm` reach zero, which is not possible',
    mend: 'Write the limits, by their middle and half their width, such as `1 mm within 0.9 mm`.',
  },
  {
    text: '0.3 dB within 0.4 dB',
    as: 'loss',
    what: 'the lower limit of `0.3 dB` is below `0 dB`',
    mend: 'Write `0.35 dB within 0.35 dB`.',
  },
  {
    text: '99 % within 2 %',
    as: 'fraction',
    what: 'the upper limit of `99 %` is above `100 %`',
    mend: 'Write `98.5 % within 1.5 %`.',
  },
  {
    text: '1.05 within 10 %',
    as: 'number',
    options: { min: 1 },
    what: 'the lower limit of `1.05` is below `1`',
    mend: 'Write `1.078 within 0.0775`.',
  },
  {
    text: '0 dB ± 0.1 dB',
    as: 'loss',
    what: 'half of the doubt about `0 dB` lies below zero',
    mend: 'Write `0.05 dB within 0.05 dB`.',
  },
  {
    text: '8 mm ± 900 %',
    options: { positive: true },
    what: 'the uncertainty is more than `8 mm` itself',
    mend: 'Write the limits, by their middle and half their width, such as `8 mm within 7.2 mm`.',
  },
  {
    text: '8 mm within 200 %',
    options: { positive: true, max: 10e-3 },
    what: 'the limits of `8 mm` reach zero, which is not possible',
    mend: 'Write the limits, by their middle and half their width, such as `5.4 mm within 4.6 mm`.',
  },
  {
    text: '0.1 dB ± 0.4 dB',
    as: 'loss',
    what: 'the uncertainty is more than three times `0.1 dB` itself',
    mend: 'Write the limits, by their middle and half their width, such as `0.1 dB within 0.09 dB`.',
  },
  {
    text: '3 mrad ± 10 rad',
    as: 'angle',
    options: { min: -0.5, max: 0.5 },
    what: 'the uncertainty is more than all that is possible here',
    mend: 'Write an angle, such as `3 mrad ± 10 %`.',
  },
  {
    text: '5 mW ± 20 dB',
    as: 'power',
    what: 'the uncertainty is more than 10 dB',
    mend: 'Write `5 mW ± 3 dB`.',
  },
];

test('a wide doubt that is honest is read: all of ±, and limits as wide as the value allows', () => {
  expect(readQuantity('5 mm ± 100 %', 'length', { positive: true })).toMatchObject({ ok: true });
  expect(readQuantity('5 mm ± 101 %', 'length', { positive: true })).toMatchObject({ ok: false });
  // between 1 mm and 9 mm; hard limits ± a have the standard uncertainty a/√3 (JCGM 100:2008, 4.3.7)
  const read = readQuantity('5 mm within 4 mm', 'length', { positive: true });
  expect(read).toMatchObject({ ok: true, shape: 'rectangular' });
  if (read.ok) expect(read.uncertainty).toBeCloseTo(4e-3 / Math.sqrt(3), 12);
});

describe('a refusal says what is wrong and how to mend it', () => {
  for (const { text, as = 'length', options, what, mend } of rows) {
    test(`${text || '(nothing)'} as ${as}${options ? ` ${JSON.stringify(options)}` : ''}`, () =>
      expect(readQuantity(text, as, options)).toEqual({ ok: false, what, mend }));
  }
  test('a text without end is cut where it is shown', () => {
    const read = readQuantity(`${'9'.repeat(201)} mm`, 'length');
    expect(read).toMatchObject({
      ok: false,
      what: expect.stringMatching(/^`9{59}…` goes on for 204 characters$/u),
    });
    expect(readQuantity(`0.${'3'.repeat(195)} mm`, 'length')).toMatchObject({ ok: true });
  });
  test('what is shown stays on one line and in its backticks', () => {
    const read = readQuantity('6.2\n`rm`\u0000 mm', 'length');
    expect(read.ok).toBe(false);
    if (!read.ok) expect(read.what.replace(/^`[^`\p{C}]*`/u, '')).not.toMatch(/[`\p{C}]/u);
  });
});
