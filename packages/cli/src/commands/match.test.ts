import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';
import { displayWidth } from '../text/display-width.ts';

const example = readFileSync(
  new URL('../../../../examples/observing-loft.drawer.yaml', import.meta.url),
  'utf8',
);

async function match(...words: readonly string[]) {
  const shell = fakeShell({ 'drawer.yaml': example });
  const code = await run(['match', ...words], shell);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

const flat = (text: string) => text.replace(/\s+/gu, ' ');

test('the ranking fits 80 columns, names a reason with its cost for every pair and defers', async () => {
  const { code, printed } = await match('drawer.yaml', '--all');
  expect(code).toBe(0);
  expect(printed.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
  expect(printed.match(/^ {2}\d+\. /gmu)).toHaveLength(90);
  const text = flat(printed);
  expect(text).toContain('90 combinations ranked by all guided light');
  expect(text.match(/, (within )?\d+(\.\d+)? dB /gu)).toHaveLength(90);
  expect(text).toContain('Your local rules and your laser safety officer decide');
});

test('a short ranking says how much it leaves out, and how to see it', async () => {
  const { printed } = await match('drawer.yaml', '--laser', 'green module');
  const text = flat(printed);
  expect(text).toContain('30 combinations');
  expect(text).toContain('18 more; `--all` prints them.');
  expect(text).not.toContain('For blue diode');
});

test('the JSON is alone on standard output, best pair first, with its purpose', async () => {
  const { code, printed } = await match('drawer.yaml', '--for', 'lp01', '--json');
  expect(code).toBe(0);
  const json = JSON.parse(printed);
  expect(json.coreward).toBe(1);
  expect(json.for).toBe('lp01');
  expect(json.pairs).toHaveLength(90);
  const pairs: { score: number; connector: string }[] = json.pairs;
  const rank = ({ score, connector }: (typeof pairs)[number]) =>
    score - (connector === 'must not meet' ? 1 : 0);
  expect(pairs.map(rank)).toEqual(pairs.map(rank).sort((a, b) => b - a));
  // the example drawer has both kinds, so the rule is seen at work
  expect(new Set(pairs.map(({ connector }) => connector === 'must not meet')).size).toBe(2);
  for (const { score, low, high } of json.pairs) {
    expect(low).toBeLessThanOrEqual(score);
    expect(high).toBeGreaterThanOrEqual(score);
    expect(high).toBeLessThanOrEqual(1);
  }
  expect(json.cautions.map(({ id }: { id: string }) => id)).toEqual(['not-evaluated', 'who-decides']);
});

test('the JSON has the keys that its page tells, in their order', async () => {
  const { printed } = await match('drawer.yaml', '--json');
  const json = JSON.parse(printed);
  const page = readFileSync(new URL('../../../../docs/match-json.md', import.meta.url), 'utf8');
  const told = [...page.matchAll(/^\| `([^`]+)` \|/gmu)].map(([, key]) => key!);
  const keys = [
    ...Object.keys(json),
    ...Object.keys(json.pairs[0]).map((key) => `pairs[].${key}`),
    ...Object.keys(json.pairs[0].reason).map((key) => `pairs[].reason.${key}`),
  ];
  expect([...told].sort()).toEqual(
    [...keys, 'leftOut[].laser', 'leftOut[].collimator', 'leftOut[].fibre', 'leftOut[].why'].sort(),
  );
});

test('a laser, a purpose or a file that is not there is refused with what there is', async () => {
  const laser = await match('drawer.yaml', '--laser', 'green modul');
  expect(laser.code).toBe(2);
  expect(laser.talked).toContain('green module');
  const purpose = await match('drawer.yaml', '--for', 'lp11');
  expect(purpose.code).toBe(2);
  expect(purpose.talked).toContain('`total`');
  const file = await match('no.yaml');
  expect(file.code).toBe(2);
  expect(file.talked).toContain('there is no such file');
});

test('a drawer in two files is one drawer', async () => {
  const [parts, fibres] = [
    example.slice(0, example.indexOf('fibres:')),
    example.slice(example.indexOf('fibres:')),
  ];
  const shell = fakeShell({ a: parts, b: `coreward: 1\n${fibres}` });
  expect(await run(['match', 'a', 'b', '--json'], shell)).toBe(0);
  expect(JSON.parse(shell.printed()).pairs).toHaveLength(90);
});

test('progress is told on standard error, and only where one has to wait', async () => {
  const at = async (millisecondsALook: number) => {
    let now = 0;
    const clock = () => (now += millisecondsALook);
    const shell = fakeShell({ 'drawer.yaml': example }, { clock });
    await run(['match', 'drawer.yaml', '--laser', 'green module'], shell);
    return shell.talked();
  };
  expect(await at(1)).toBe('');
  expect(await at(150)).toMatch(/^16 of 30, best so far \d+ %: green module \+ /u);
});

test('files that are not there, folders and a drawer without light are each refused at once, as drawers', async () => {
  const shell = fakeShell({ 'box.yaml': { kind: 'folder' }, 'bare.yaml': 'coreward: 1\n' });
  expect(await run(['match', 'nowhere.yaml', 'box.yaml'], shell)).toBe(2);
  expect(shell.talked()).toContain('nowhere.yaml\n  there is no such file');
  expect(shell.talked()).toContain('writes a drawer to');
  expect(shell.talked()).toContain('one ending in `.drawer.yaml`');
  expect(await run(['match', 'bare.yaml'], shell)).toBe(2);
  expect(shell.talked()).toContain('no lasers');
  expect(shell.talked()).toContain('no fibres');
});
