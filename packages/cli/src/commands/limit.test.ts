import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';
import { displayWidth } from '../text/display-width.ts';

async function limit(...words: readonly string[]) {
  const shell = fakeShell();
  const code = await run(['limit', ...words], shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

const green = ['--wavelength', '532 nm', '--duration', '10 s'];

test('the text fits 80 columns, and ends with who decides', async () => {
  for (const words of [
    green,
    [...green, '--tissue', 'skin'],
    ['--wavelength', '1310 nm', '--duration', '100 s', '--angle', '50 mrad'],
    ['--wavelength', '1064 nm', '--duration', '100 fs'],
    ['--wavelength', '785 nm', '--duration', '0.25 s'],
    ['--wavelength', '375 nm', '--duration', '30000 s'],
  ]) {
    const { code, printed, talked } = await limit(...words);
    expect(code).toBe(0);
    expect(talked).toBe('');
    expect(printed.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
    expect(printed.replace(/\s+/gu, ' ')).toMatch(
      /Caution only, computed from what you entered\. Your local rules and your laser safety officer decide; ask before you switch on\. $/u,
    );
  }
});

test('the JSON is alone on standard output, in SI', async () => {
  const { code, printed } = await limit(...green, '--json');
  expect(code).toBe(0);
  const json = JSON.parse(printed);
  // thermal limit of a visible beam from 10 s on, ICNIRP 2013, from memory
  expect(json).toMatchObject({
    wavelength_m: 532e-9,
    duration_s: 10,
    angle_rad: 0.0015,
    tissue: 'eye',
    sets: [
      { set: 'eu2006', exposure_J_m2: 100, irradiance_W_m2: 10 },
      { set: 'icnirp2013', exposure_J_m2: 100, irradiance_W_m2: 10 },
    ],
    governing: 'icnirp2013',
  });
});

// [what was typed, what is said of it]
const slips: readonly (readonly [readonly string[], string])[] = [
  [[], '--wavelength\n  nothing was written for it.\n  mend: Write `--wavelength "635 nm"`.'],
  [['--wavelength', '532', '--duration', '10 s'], 'mend: Write a length, such as `532 nm`.'],
  [['--wavelength', '200 nm', '--duration', '10 s'], 'outside what this tool covers, 315 nm to 1 mm'],
  [['--wavelength', '532 nm', '--duration', '1 day'], '--duration\n'],
  [[...green, '--angle', '5'], '--angle\n'],
  [[...green, '--tissue', 'nose'], '`nose` is not known here.\n  mend: Write `eye` or `skin`.'],
  [[...green, '--tisue', 'eye'], 'mend: Write `--tissue`.'],
];
for (const [words, said] of slips) {
  test(`\`coreward limit ${words.join(' ')}\` is refused with a mend`, async () => {
    const { code, printed, talked } = await limit(...words);
    expect(code).toBe(2);
    expect(printed).toBe('');
    expect(talked).toContain(said);
    expect(talked).toContain('mend: ');
  });
}

test('nothing typed reaches the terminal as a control character', async () => {
  const { talked } = await limit('--wavelength', '532\u001b[2J', '--duration', '10 s');
  expect(talked).not.toContain('\u001b');
});

// A check against change, no check of the numbers: those have their own.
test('the answer in docs/hazard-limits.md is what the command says', async () => {
  const page = readFileSync(new URL('../../../../docs/hazard-limits.md', import.meta.url), 'utf8');
  const { printed } = await limit('--wavelength', '1310 nm', '--duration', '100 s');
  expect(page).toContain(`\`\`\`text\n${printed}\`\`\`\n\n<!-- end of answer -->`);
});
