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
  { text: '20 µm', options: { max: 12e-6 }, what: '`20 µm` is more than `12 µm`', mend: 'Write `12 µm`.' },
  { text: '0.9', as: 'number', options: { min: 1 }, what: '`0.9` is less than `1`', mend: 'Write `1`.' },
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
    mend: 'Write `1 mm ± 0.866 mm`.',
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
    text: '1 mm ± 20 mm',
    options: { positive: true },
    what: 'the uncertainty is more than ten times `1 mm`',
    mend: 'Write `1 mm ± 1 mm`.',
  },
];

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
