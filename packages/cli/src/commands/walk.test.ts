import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';
import { displayWidth } from '../text/display-width.ts';

const example = readFileSync(
  new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
);

async function walk(words: readonly string[], lines: readonly string[] | null = null) {
  const files: Record<string, string> = { 'loft.yaml': example };
  if (lines !== null) files['-'] = lines.join('\n');
  const shell = fakeShell(files);
  const code = await run(['walk', 'loft.yaml', ...words], shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

test('without a keyboard a practice walk goes on to the end, and the same seed to the same end', async () => {
  const one = await walk(['--practice', '7', '--json']);
  expect(one.code).toBe(0);
  const told = JSON.parse(one.printed);
  expect(told.ended).not.toBeNull();
  expect(told.moves.length).toBeGreaterThan(4);
  expect(told.best).toBeGreaterThan(told.floor);
  expect(told.missingLow).toBeLessThanOrEqual(told.missing);
  expect(told.missingHigh).toBeGreaterThanOrEqual(told.missing);
  expect((await walk(['--practice', '7', '--json'])).printed).toBe(one.printed);
  expect((await walk(['--practice', '8', '--json'])).printed).not.toBe(one.printed);
});

test('what it says fits 80 columns, and the cautions of the step come before a real walk', async () => {
  const { printed, talked, code } = await walk([], ['0.2', '3', 'q']);
  expect(code).toBe(0);
  expect(`${printed}${talked}`.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
  expect(talked.indexOf('Who decides')).not.toBe(-1);
  expect(talked.indexOf('Who decides')).toBeLessThan(talked.indexOf('Block the beam'));
  expect(printed).toContain('Stopped on the way');
});

test('u takes the last answer back, n and s count as answers, and what is no reading is said so', async () => {
  const { printed, talked } = await walk(['--json'], ['0.2', '-3', 'bright', '3', 'u', 's', 'n', 'q']);
  expect(talked.match(/Write|Type/gu)?.length).toBeGreaterThanOrEqual(2);
  const { moves } = JSON.parse(printed);
  expect(moves.map(({ outcome }: { outcome: string }) => outcome)).toEqual([
    'did',
    'skipped',
    'did-not-work',
  ]);
});

test('lines that end are an end, and a seed that is none is refused', async () => {
  const { printed } = await walk(['--taught', '--json'], ['0.2']);
  // the last, empty line of a file is no answer
  expect(JSON.parse(printed).ended).toBeNull();
  const refused = await walk(['--practice', 'seven']);
  expect(refused.code).toBe(2);
  expect(refused.talked).toContain('--practice 7');
});

test('a walk is the lines that were typed: kept and fed again, they lead to where it stood', async () => {
  const [evening, morning] = [
    ['0.2', '3', '2.1', 'bright', 's', '2.6', 'u'],
    ['4.4', 'n', '5'],
  ];
  const stopped = JSON.parse((await walk(['--json'], evening)).printed);
  const whole = JSON.parse((await walk(['--json'], [...evening, ...morning])).printed);
  expect(stopped.ended).toBeNull();
  expect(stopped.moves.length).toBeGreaterThan(2);
  // what was done in the evening stands there in the morning
  expect(whole.moves.slice(0, stopped.moves.length)).toEqual(stopped.moves);
  expect(whole.moves.length).toBeGreaterThan(stopped.moves.length);
});
