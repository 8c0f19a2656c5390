import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';
import { displayWidth } from '../text/display-width.ts';

const example = readFileSync(
  new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
);

async function caution(...words: readonly string[]) {
  const shell = fakeShell({ 'loft.yaml': example });
  const code = await run(['caution', ...words], shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

const flat = (text: string) => text.replace(/\s+/gu, ' ');

test('the text fits 80 columns, begins with the worst and ends with who decides', async () => {
  for (const words of [
    [],
    ['--step', '0'],
    ['--step', 'far-lens'],
    ['--step', '10'],
    ['--answer', 'officer=yes'],
  ]) {
    const { code, printed, talked } = await caution('loft.yaml', ...words);
    expect(talked).toBe('');
    expect(code).toBe(0);
    expect(printed.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
    // packing up has no numbers of its own
    expect(flat(printed)).toContain(words.includes('10') ? 'To mind first: ' : 'Worst, severe: ');
    expect(flat(printed)).not.toContain('Nothing here');
    expect(flat(printed)).toContain('Do now: ');
    // one place is named once, whatever number of lines of light it has
    expect(flat(printed)).not.toMatch(/[(;] ?([^();]+); \1[);]/u);
    expect(flat(printed).match(/ask before you switch on\./gu)).toHaveLength(1);
  }
});

test('the JSON is an array, hazards worst first and who decides last', async () => {
  const { code, printed } = await caution('loft.yaml', '--json');
  expect(code).toBe(0);
  const entries = JSON.parse(printed);
  expect(Array.isArray(entries)).toBe(true);
  expect(entries[0].kind).toBe('hazard');
  expect(entries[0].level).toBe('severe');
  expect(entries.at(-1).kind).toBe('deferral');
  const exit = entries.find(({ id }: { id: string }) => id === 'laser-exit');
  expect(exit).toMatchObject({ unit: 'W/m²', limit: 10, duration_s: 10, wavelength_m: 520e-9 });
});

test('the keys of the JSON are those of docs/cautions.md', async () => {
  const { printed } = await caution('loft.yaml', '--json');
  const page = readFileSync(new URL('../../../../docs/cautions.md', import.meta.url), 'utf8');
  const told = [...page.matchAll(/^\| `([^`.[\]]+)` \|/gmu)].map(([, key]) => key!);
  for (const entry of JSON.parse(printed)) expect(Object.keys(entry).sort()).toEqual([...told].sort());
});

test('an answer changes what is counted', async () => {
  const power = async (...words: readonly string[]) => {
    const { printed } = await caution('loft.yaml', '--json', ...words);
    return JSON.parse(printed).find(({ id }: { id: string }) => id === 'laser-exit').power_W;
  };
  expect(await power()).toBeCloseTo(23e-3, 9);
  // a reading that may be higher, 11.5 mW + 1.645 · 8 %, is not lowered by an answer
  expect(await power('--answer', 'highest-power=12 mW')).toBeCloseTo(11.5e-3 * (1 + 1.645 * 0.08), 5);
  expect(await power('--answer', 'green-module:highest-power=30 mW')).toBeCloseTo(30e-3, 9);
});

test('the coupling reached so far changes what reaches the reference source', async () => {
  const { printed } = await caution('loft.yaml', '--coupling', '10 %', '--answer', 'infrared=none', '--json');
  const entries = JSON.parse(printed);
  const receives = entries.find(({ id }: { id: string }) => id === 'reference-receives');
  expect(receives.value).toBeCloseTo(2.3e-3, 9);
  const connected = entries.find(({ id }: { id: string }) => id === 'reference-stays-connected');
  // it bears 1 mW, and a tenth of the laser's light is there
  expect(connected.limit).toBeCloseTo(1e-3, 9);
  expect(connected.value).toBeCloseTo(10e-3, 9);
});

// [what was typed, what is said of it]
const slips: readonly (readonly [readonly string[], string])[] = [
  [['loft.yaml', '--step', '11'], '0 to 10'],
  [['loft.yaml', '--step', 'lunch'], 'before-power'],
  [['loft.yaml', '--answer', 'highest-power'], 'Write `--answer "highest-power=30 mW"`'],
  [['loft.yaml', '--answer', 'highest-powr=3 mW'], 'Write `highest-power`'],
  [['loft.yaml', '--answer', 'beam-height=perhaps'], '`yes` or `no`'],
  [['loft.yaml', '--coupling', '140 %'], '--coupling'],
  [['none.yaml'], 'there is no such file'],
];
for (const [words, said] of slips) {
  test(`\`coreward caution ${words.join(' ')}\` is refused with a mend`, async () => {
    const { code, printed, talked } = await caution(...words);
    expect(code).toBe(2);
    expect(printed).toBe('');
    expect(talked).toContain(said);
    expect(talked).toContain('mend: ');
  });
}
