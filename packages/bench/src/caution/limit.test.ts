import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { Refusal } from '../refusal.ts';
import { answerLimit } from './limit-answer.ts';
import { limitJson } from './limit-json.ts';
import { type LimitTexts, readLimitQuestion } from './limit-question.ts';
import { limitRemarks } from './limit-remarks.ts';
import { limitSections } from './limit-sections.ts';
import { limitText, timeText, wavelengthText } from './limit-texts.ts';
import { standingLine } from './standing-line.ts';

const texts = (
  wavelength?: string,
  duration?: string,
  angle?: string,
  tissue: LimitTexts['tissue'] = 'eye',
): LimitTexts => ({
  wavelength: { where: 'wavelength', text: wavelength },
  duration: { where: 'duration', text: duration },
  angle: { where: 'angle', text: angle },
  tissue,
});
const ask = (...words: Parameters<typeof texts>) => answerLimit(readLimitQuestion(texts(...words)));

/** Everything that is said, as one text. */
const said = (...words: Parameters<typeof texts>): string => JSON.stringify(limitSections(ask(...words)));

function refusal(question: () => unknown): Refusal {
  try {
    question();
  } catch (error) {
    if (error instanceof Refusal) return error;
    throw error;
  }
  throw new Error('nothing was refused');
}

test('values are read in people’s units', () => {
  expect(readLimitQuestion(texts('532 nm', '10 s', '5 mrad')).exposure).toEqual({
    tissue: 'eye',
    wavelength: 532e-9,
    exposureTime: 10,
    sourceAngle: 5e-3,
  });
  expect(readLimitQuestion(texts('1.064 µm', '18 µs')).exposure).toEqual({
    tissue: 'eye',
    wavelength: 1064e-9,
    exposureTime: 18e-6,
    sourceAngle: null,
  });
});

test('all that cannot be read is refused at once, each under its own name', () => {
  const { parts } = refusal(() => readLimitQuestion(texts('532', undefined, '5 nm')));
  expect(parts.map(({ where }) => where)).toEqual(['wavelength', 'duration', 'angle']);
  expect(parts[0]!.mend).toContain('532 nm');
  expect(parts[1]!.mend).toBe('Write `duration "10 s"`.');
});

for (const bad of ['0 nm', '-5 nm', '532 s', 'green', '']) {
  test(`a wavelength of \`${bad}\` is refused`, () => {
    expect(refusal(() => readLimitQuestion(texts(bad, '10 s'))).parts).toHaveLength(1);
  });
}

for (const [doubtful, plain] of [
  ['532 nm ± 2 nm', '532 nm'],
  ['532 nm within 1 %', '532 nm'],
] as const) {
  test(`\`${doubtful}\` is refused, and what is offered instead is read`, () => {
    const [part] = refusal(() => readLimitQuestion(texts(doubtful, '10 s'))).parts;
    expect(part!.mend).toContain(`\`${plain}\``);
    expect(readLimitQuestion(texts(plain, '10 s')).exposure.wavelength).toBeCloseTo(532e-9, 15);
  });
}

for (const [words, where] of [
  [['200 nm', '10 s', undefined], 'wavelength'],
  [['2 mm', '10 s', undefined], 'wavelength'],
  [['532 nm', '10 h', undefined], 'duration'],
  [['375 nm', '10 ps', undefined], 'duration'],
  [['532 nm', '10 s', '4 rad'], 'angle'],
] as const) {
  test(`${words.join(', ')} is outside what is covered, and refused under the name it was asked by`, () => {
    const [part] = refusal(() => ask(...words)).parts;
    expect(part!.where).toBe(where);
    expect(part!.mend).not.toBe('');
  });
}

test('the JSON says what both sets say, and which governs', () => {
  const json = limitJson(ask('1310 nm', '100 s'));
  // 400 against 10 000 W/m²: from memory, as the tables of optics/hazard say
  expect(json).toMatchObject({
    coreward: 1,
    wavelength_m: 1310e-9,
    duration_s: 100,
    angle_rad: 1.5e-3,
    angleAssumed: true,
    tissue: 'eye',
    governing: 'eu2006',
    bothTheSame: false,
    estimate: true,
    caution: standingLine,
  });
  expect(json.sets.map(({ set }) => set)).toEqual(['eu2006', 'icnirp2013']);
  expect(json.sets[0]!.irradiance_W_m2).toBeCloseTo(400, 9);
  expect(json.sets[0]!.exposure_J_m2).toBeCloseTo(40_000, 6);
  expect(json.sets[1]!.irradiance_W_m2).toBeCloseTo(10_000, 6);
  for (const one of json.sets) expect(one.evidence).toBe('from memory');
  expect(limitJson(ask('1310 nm', '100 s', '2 mrad')).angle_rad).toBe(2e-3);
  expect(limitJson(ask('633 nm', '1 s')).sets[0]!.evidence).toBe('read');
});

/** Every path that ends in a value or a list; list items as `[]`. */
function pathsIn(node: unknown, path = ''): readonly string[] {
  if (Array.isArray(node)) {
    const items = node.filter((item) => typeof item === 'object');
    return [path, ...items.flatMap((item) => pathsIn(item, `${path}[]`))];
  }
  if (typeof node !== 'object' || node === null) return [path];
  return Object.entries(node).flatMap(([key, child]) => pathsIn(child, path === '' ? key : `${path}.${key}`));
}

// docs/hazard-limits.md is the promise made to scripts
test('docs/hazard-limits.md tells every key of the JSON, in order, and no other', () => {
  const page = readFileSync(new URL('../../../../docs/hazard-limits.md', import.meta.url), 'utf8');
  const table = page.slice(page.indexOf('| key |'), page.indexOf('## How sure'));
  const told = [...table.matchAll(/^\| `([^`]+)` \|/gmu)].map(([, key]) => key);
  expect(told).toEqual([...new Set(pathsIn(limitJson(ask('532 nm', '10 s'))))]);
});

test('every text ends in the standing line, says it is an estimate and names sets, stop, time and marks', () => {
  const text = said('532 nm', '10 s');
  expect(limitSections(ask('532 nm', '10 s')).at(-1)).toEqual({
    heading: 'Who decides',
    blocks: [{ kind: 'text', text: standingLine }],
  });
  for (const word of [
    'estimate',
    'EU 2006',
    'ICNIRP 2013',
    '7 mm',
    '10 s',
    '532 nm',
    '[M]',
    '[R]',
    '10 W/m²',
  ]) {
    expect(text).toContain(word);
  }
  expect(text).toContain('both sets say the same');
  expect(said('1064 nm', '10 ns')).toContain('ICNIRP 2013 governs');
  expect(said('1310 nm', '100 s')).toContain('EU 2006 governs');
});

/** Words that no result may use. */
const neverSaid =
  /\bsafe\b|eye-safe|harmless|approved|compliant|certified|no protection|ok to look|\bclass \d/iu;

test('no answer claims what nobody can claim', () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 315, max: 3000 }),
      fc.constantFrom('1 ns', '10 µs', '0.25 s', '1 s', '10 s', '100 s', '30000 s'),
      fc.constantFrom(undefined, '1 mrad', '50 mrad'),
      fc.constantFrom('eye' as const, 'skin' as const),
      (nm, duration, angle, tissue) => {
        const words = [`${nm} nm`, duration, angle, tissue] as const;
        expect(said(...words)).not.toMatch(neverSaid);
        expect(JSON.stringify(limitJson(ask(...words)))).not.toMatch(neverSaid);
        expect(said(...words)).not.toMatch(/NaN|undefined|Infinity/u);
      },
    ),
  );
});

test('what relies on a reaction, a train, a large source or bare skin is said', () => {
  const remarks = (...words: Parameters<typeof texts>) => limitRemarks(ask(...words)).join(' ');
  expect(remarks('532 nm', '0.25 s')).toContain('relies on someone reacting');
  expect(remarks('532 nm', '10 s')).not.toContain('reacting');
  expect(remarks('785 nm', '0.25 s')).toContain('nothing warns of light that is not seen. Ask for 100 s');
  expect(remarks('785 nm', '100 s')).not.toContain('nothing warns');
  expect(remarks('785 nm', '10 ns')).toContain('one pulse by itself');
  expect(remarks('785 nm', '10 ns')).not.toContain('nothing warns');
  expect(remarks('532 nm', '10 s', '20 mrad')).toContain('never holds for a laser beam');
  expect(remarks('532 nm', '10 s', '1 mrad')).not.toContain('never holds');
  expect(remarks('375 nm', '1000 s')).toContain('whole day');
  expect(remarks('532 nm', '10 s')).toContain('magnifier');
  expect(remarks('532 nm', '10 s', undefined, 'skin')).toContain('pinpoint burn');
  expect(remarks('1550 nm', '10 s', undefined, 'skin')).toContain('0.01 m²');
});

test('a limit is never rounded up', () => {
  // 18·0.25^0.75/0.25 = 25.4558 W/m²
  expect(limitText(25.4558, 'irradiance', 4)).toBe('25.45 W/m²');
  expect(limitText(10, 'irradiance')).toBe('10 W/m²');
  expect(limitText(0.1 + 0.2, 'irradiance')).toBe('0.3 W/m²');
  expect(limitText(0.29999, 'irradiance')).toBe('0.299 W/m²');
  fc.assert(
    fc.property(fc.double({ min: 1e-6, max: 1e15, noNaN: true }), (value) => {
      const shown = Number(limitText(value, 'irradiance', 4).replace(' W/m²', '').replace('−', '-'));
      // one unit of the last of 16 digits is rounding of the text itself
      expect(shown).toBeLessThanOrEqual(value * (1 + 1e-12));
      expect(shown).toBeGreaterThan(value * 0.998);
    }),
  );
});

test('times go down to femtoseconds, wavelengths stay in nanometres', () => {
  expect([100e-15, 5e-12, 10e-9, 18e-6, 1e-3, 0.25, 3e4].map(timeText)).toEqual([
    '100 fs',
    '5 ps',
    '10 ns',
    '18 µs',
    '1 ms',
    '0.25 s',
    '30000 s',
  ]);
  expect([532e-9, 1064e-9, 632.8e-9, 10.6e-6].map(wavelengthText)).toEqual([
    '532 nm',
    '1064 nm',
    '632.8 nm',
    '10.6 µm',
  ]);
});
