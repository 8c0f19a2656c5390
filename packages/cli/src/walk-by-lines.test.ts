import { readFileSync } from 'node:fs';
import { hiddenBenchOf, type PracticeBench, practiceBench, readLaunch, type Screw } from '@coreward/bench';
import { seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { type FakeShell, fakeShell } from './fake-shell.ts';
import { run } from './run.ts';
import { displayWidth } from './text/display-width.ts';
import { whicheverFirst } from './whichever-first.ts';

// a thread of the focus is turned by count, which only a hand can say
const text = readFileSync(
  new URL('../../../examples/observing-loft.launch.yaml', import.meta.url),
  'utf8',
).replace(', thread: 0.5 mm', '');

/** What is asked last, as a hand hears it. */
function lastAsked(talked: string): string {
  const steps = [...talked.matchAll(/\n *\d+\. ([\s\S]*?\.)(?=\n)/gu)];
  return (steps.at(-1)?.[1] ?? '').replace(/\s+/gu, ' ');
}

/** Turns in strides, and looks at the meter after each; without haste, and without time. */
function* turned(bench: PracticeBench, screw: Screw, sense: number, until: (share: number) => boolean) {
  for (let turns = 0; turns < 0.5 && !until(bench.trueShare()); turns += 0.001) {
    bench.turn(screw, sense * 0.001);
    yield;
  }
}

/** Does at the bench what was asked; each pause is one reading. */
function* handDoes(bench: PracticeBench, asked: string, peak: number, floor: number): Generator<void, void> {
  // nobody is at the beam as soon as it is said
  for (let i = 0; i < 50; i += 1) yield;
  bench.block(asked.startsWith('Block'));
  const [, mirror, axis] = /(M[12]) (horizontal|vertical)/u.exec(asked) ?? [];
  const screw = { mirror, axis } as Screw;
  const [, number, unit = ''] = /fallen to ([\d.]+) (\S+)\./u.exec(asked) ?? [];
  if (number !== undefined) {
    const target = Number(number) * ({ mW: 1e-3, µW: 1e-6, nW: 1e-9 }[unit] ?? 1);
    yield* turned(
      bench,
      screw,
      asked.includes('onwards') ? 1 : -1,
      (share) => share <= (target - floor) / peak,
    );
  } else if (asked.startsWith('Rock')) {
    let best = 0;
    const fell = (share: number) => {
      best = Math.max(best, share);
      return share < 0.7 * best;
    };
    yield* turned(bench, screw, 1, fell);
    let top = 0;
    yield* turned(bench, screw, -1, (share) => {
      [top, best] = [Math.max(top, share), Math.max(best, share)];
      return top > 0.97 * best && share < 0.7 * top;
    });
    let before = 0;
    yield* turned(bench, screw, 1, (share) => {
      const isOver = share < before && share > 0.9 * best;
      before = share;
      return share > 0.992 * best || isOver;
    });
  }
}

/** A shell with a device on a simulated bench, at which somebody does what is said. */
function atTheBench(seed: number, typed: string | null): { shell: FakeShell; bench: PracticeBench } {
  const random = seededUniform(seed);
  const hidden = hiddenBenchOf(readLaunch(text, 'loft'), random, 'steered-by-eye');
  const bench = practiceBench(hidden, random);
  const look = bench.watcher(seed);
  let time = 0;
  const files: Record<string, string> = { 'loft.yaml': text };
  if (typed !== null) files['-'] = typed;
  const shell: FakeShell = fakeShell(files, {
    clock: () => time,
    listen: async function* () {
      const say = () => {
        time += 20;
        return `P=${look().toExponential(4)} W\r\n`;
      };
      for (let i = 0; i < 8; i += 1) yield say();
      for (let done = ''; ; ) {
        const asked = lastAsked(shell.talked());
        if (asked !== done) {
          done = asked;
          for (const _ of handDoes(bench, asked, hidden.peakReading, hidden.floor * hidden.peakReading))
            yield say();
        }
        yield say();
        if (shell.printed() !== '' || time > 3e6) return;
      }
    },
  });
  return { shell, bench };
}

test('a whole walk by a device’s lines, without a key, to where it claims to be', async () => {
  const { shell, bench } = atTheBench(11, null);
  expect(await run(['walk', 'loft.yaml', '--lines', '/dev/ttyUSB0', '--json'], shell)).toBe(0);
  const told = JSON.parse(shell.printed());
  expect(told.claims95).toBe(true);
  // what it claims is true of this bench
  expect(bench.trueShare()).toBeGreaterThan(0.95);
  expect(shell.talked()).toMatch(/Past the peak: back until [\d.]+ [mµn]?W\./u);
  expect(shell.talked()).toContain('At the peak: hands off.');
  expect(
    shell
      .talked()
      .split('\n')
      .filter((line) => displayWidth(line) > 80),
  ).toEqual([]);
});

test('keys are one’s own meanwhile: an answer taken back, and an end', async () => {
  const shell = fakeShell(
    { 'loft.yaml': text, '-': 's\nn\nu\nq' },
    {
      listen: async function* () {
        for (let i = 0; i < 8; i += 1) yield '1.5 mW\n';
        // a device that is left alone while somebody types
        await new Promise((later) => setTimeout(later, 50));
        yield '1.5 mW\n';
      },
    },
  );
  expect(await run(['walk', 'loft.yaml', '--lines', 'meter', '--json'], shell)).toBe(0);
  const { moves } = JSON.parse(shell.printed());
  expect(moves.map(({ outcome }: { outcome: string }) => outcome)).toEqual(['skipped']);
});

test('what cannot be listened to is refused with a mend', async () => {
  const refused = async (files: Record<string, string>, words: readonly string[]) => {
    const shell = fakeShell({ 'loft.yaml': text, ...files });
    expect(await run(['walk', 'loft.yaml', ...words], shell)).toBe(2);
    return shell.talked();
  };
  expect(await refused({}, ['--lines', 'nowhere'])).toContain('ENOENT');
  expect(await refused({ log: 'hello\nworld\n' }, ['--lines', 'log'])).toContain('stty');
  expect(await refused({}, ['--lines', 'x', '--practice', '7'])).toContain('Leave out `--lines`');
});

test('of two sources nothing is lost, and it ends with the later', async () => {
  async function* slow() {
    for (const value of [1, 2, 3]) {
      await new Promise((later) => setTimeout(later, 5));
      yield value;
    }
  }
  async function* fast() {
    yield* ['a', 'b'];
  }
  const came: unknown[] = [];
  for await (const first of whicheverFirst(slow(), fast()))
    came.push(first.done ? `${first.from} ends` : first.value);
  expect(came).toEqual(['a', 'b', 'other ends', 1, 2, 3, 'one ends']);
});
