import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { type FakeFile, fakeShell } from '../fake-shell.ts';
import { run } from '../run.ts';
import { displayWidth } from '../text/display-width.ts';

const example = readFileSync(
  new URL('../../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
);

async function steer(
  words: readonly string[],
  lines: readonly string[] | null = null,
  files: Map<string, FakeFile> = new Map(),
) {
  const given = { 'loft.yaml': example, ...Object.fromEntries(files) };
  const shell = fakeShell(lines === null ? given : { ...given, '-': lines.join('\n') });
  const code = await run(['steer', 'loft.yaml', ...words], shell);
  for (const [path, file] of shell.files) if (path !== '-') files.set(path, file);
  return { code, printed: shell.printed(), talked: shell.talked() };
}

/** All four screws learned, right and up being +. */
const learned = ['right', 'up', 'r', 'up'];
const turnsOf = (printed: string) =>
  (
    JSON.parse(printed) as {
      readonly moves: readonly { step: string; turns?: number; screw?: { mirror: string; axis: string } }[];
    }
  ).moves.flatMap(({ step, turns, screw }) =>
    step === 'turn' ? [{ screw: `${screw?.mirror} ${screw?.axis}`, turns }] : [],
  );

test('without a keyboard a practice steer goes on to light, and the same seed to the same end', async () => {
  const one = await steer(['--practice', '7', '--json']);
  expect(one.code).toBe(0);
  expect(JSON.parse(one.printed).ended).toMatch(/light|found/u);
  expect((await steer(['--practice', '7', '--json'])).printed).toBe(one.printed);
  expect((await steer(['--practice', '8', '--json'])).printed).not.toBe(one.printed);
});

test('nothing is asked at a real bench before what must be read about reverse light was read', async () => {
  const unread = await steer([], ['right', 'up']);
  expect(unread.talked).toContain('Who decides');
  expect(unread.talked).toContain('Type `read`');
  expect(unread.talked).not.toContain('M1, horizontal screw');
  const { talked, printed } = await steer([], ['read', ...learned, '1 0 1 0', '', 'q']);
  expect(talked.indexOf('Who decides')).toBeLessThan(talked.indexOf('M1, horizontal screw'));
  expect(printed).toContain('Stopped on the way');
  expect(`${printed}${talked}`.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
});

test('a beam that runs parallel to its place is shifted by both mirrors, one against the other', async () => {
  const { printed } = await steer(['--json'], ['read', ...learned, '1; 0 mm; 1; 0', '', '', 'q']);
  // two mirrors 150 mm apart shift a beam by 150 mm times the angle that one of them turns it by, and the other turns back: 1 mm
  // asks for 6.67 mrad; 0.25 mm pitch on 38 mm tilts by 6.58 mrad a turn, and a mirror turns light by twice its tilt. The
  // lengths are those of the example; the law of reflection, no more
  const turn = 1e-3 / 0.15 / (2 * (0.25 / 38));
  expect(turnsOf(printed)).toEqual([
    // linear: exact but for rounding
    { screw: 'M1 horizontal', turns: expect.closeTo(-turn, 9) },
    { screw: 'M2 horizontal', turns: expect.closeTo(turn, 9) },
  ]);
  const swapped = await steer(['--json'], ['read', 'l', ...learned.slice(1), '1 0 1 0', '', '', 'q']);
  expect(turnsOf(swapped.printed)[0]?.turns).toBeCloseTo(turn, 9);
});

test('u takes the last answer back, also where up could be meant, and what is no answer is said so', async () => {
  const { printed, talked } = await steer(
    ['--json'],
    ['read', 'up', 'right', 'u', 'left', 'u', 'right', 'up', 'r', 'up', '1; 2', '1; 2; 3; 900', 'q'],
  );
  expect(talked).toContain('Type left or right.');
  expect(talked).toContain('such as `1.2; -0.3; -2; 0.4`');
  expect(talked).toContain('more than a card is wide');
  const { moves } = JSON.parse(printed);
  expect(moves.map(({ to }: { to: string }) => to)).toEqual(['right', 'up', 'right', 'up']);
});

test('a kept steer goes on where it was stopped, undone answers and all, without being read again', async () => {
  const files = new Map<string, FakeFile>();
  const keep = ['--keep', 'loft.steer', '--json'];
  await steer(keep, ['read', 'right', 'down', 'u', 'up', 'r'], files); // the terminal is lost
  const resumed = await steer(keep, ['up', '1 0 1 0', '', 'q'], files);
  const whole = await steer(['--json'], ['read', ...learned, '1 0 1 0', '', 'q']);
  expect(resumed.printed).toBe(whole.printed);
  expect(resumed.talked).not.toContain('Type `read`');
  // other places of the cards are another steer
  expect((await steer([...keep, '--far', '150 mm'], ['q'], files)).code).toBe(2);
});

test('cards stand where they are said to, and where none can stand is refused, all at once', async () => {
  const { talked } = await steer(['--near', '60', '--far', '30 cm', '--practice', '7'], ['q']);
  expect(talked.replace(/\s+/gu, ' ')).toContain('One 60 mm before the lens, the other 300 mm behind M1');
  const refused = await steer(['--near', '5 m', '--reads', 'well']);
  expect(refused.code).toBe(2);
  expect(refused.talked).toContain('--near');
  expect(refused.talked).toContain('--reads');
});
