import { readFileSync } from 'node:fs';
import { play, practiceBench, Refusal, ridgeWalk } from '@coreward/bench';
import { seededUniform } from '@coreward/optics';
import { expect, test, vi } from 'vitest';
import { benchesIn } from '../scripts/bench-walk/bench-file.ts';
import { settingsText } from '../scripts/bench-walk/document.ts';
import { drawnBenches } from '../scripts/bench-walk/drawn-benches.ts';
import { policies } from '../scripts/bench-walk/policies.ts';
import { requestOf } from '../scripts/bench-walk/request.ts';
import { walkTable } from '../scripts/bench-walk/walk-table.ts';
import { jsonOf, walked } from '../scripts/bench-walk/walked.ts';

// some dozen walks a test, on a machine that may be busy with others
vi.setConfig({ testTimeout: 120_000 });

const shipped = readFileSync('packages/bench/reference/walk/benches-V.json', 'utf8');
const all = [0, 199] as const;
const walkedOn = (policy: string, n: number) => walked(policy, 'V', benchesIn(shipped, 'V', [0, n - 1]));

/** The parts of what is refused. */
function refused(act: () => unknown) {
  try {
    act();
  } catch (error) {
    if (error instanceof Refusal) return error.parts;
    throw error;
  }
  return [];
}

/** The first shipped bench with one place changed. */
function benchWith(change: (row: Record<string, unknown>) => void): string {
  const [row] = JSON.parse(shipped) as Record<string, unknown>[];
  change(row!);
  return JSON.stringify([row]);
}

test('a row says what is agreed, and nothing else', () => {
  // the names are those of the alignment protocol, section 8
  expect(Object.keys(jsonOf(walkedOn('walk_hold1', 4))).sort()).toEqual(
    [
      ...['policy', 'suite', 'n', 'opsToStay', 'opsToFirst', 'opsAtStop', 'seconds', 'typed'],
      ...['fail95', 'fail90', 'finalMedian', 'finalP5', 'doneCalibration'],
    ].sort(),
  );
});

// own simulation computed with NumPy on the same 200 benches, other noise. The median of 200 walks of some 10 screws' scatter is
// known to 1.25 · 10 ∕ √200, 0.9 screws; two programs differ by √2 of that, and two such errors are 2.5
for (const { policy, stay, first, stop, typed, seconds, fail95 } of [
  { policy: 'walk_hold1', stay: 29, first: 19, stop: 29, typed: 18, seconds: 299, fail95: 0.19 },
  { policy: 'walk_hold', stay: 45, first: 19, stop: 46, typed: 26, seconds: 457, fail95: 0.19 },
]) {
  test(`${policy} takes as many screws, readings and seconds as in another program, and fails alike`, () => {
    const row = walkedOn(policy, 200);
    for (const [ours, theirs] of [
      [row.opsToStay, stay],
      [row.opsToFirst, first],
      [row.opsAtStop, stop],
      [row.typed, typed],
    ] as const)
      expect(Math.abs((ours ?? 999) - theirs)).toBeLessThanOrEqual(2.5);
    // a screw and its reading take 10 s on the mean
    expect(Math.abs((row.seconds ?? 9999) - seconds)).toBeLessThanOrEqual(25);
    // two shares of 19 % of 200 differ by 3.9 points, 1σ; of so many figures one may be two of those off, hardly three
    expect(Math.abs(row.fail95 - fail95)).toBeLessThanOrEqual(0.118);
  });
}

test('baselines are marked as such, and what never happens has no figure', () => {
  const row = walkedOn('coord', 60);
  expect(row.opsToStay).toBeNull();
  expect(row.seconds).toBeNull();
  expect(walkTable([row])).toContain('coord (baseline)');
  expect(walkTable([walkedOn('ridge', 2)])).not.toContain('baseline');
  // own simulation computed with NumPy: one knob live fails on 92 % of 200; 60 of them know that to 3.5 points
  expect(row.fail95).toBeGreaterThan(0.8);
});

test('our own walk beats the taught one on benches it was not made on', () => {
  const benches = drawnBenches('V', [900_000, 900_039]);
  const [ours, taught] = [walked('ridge', 'V', benches), walked('walk_hold1', 'V', benches)];
  expect(ours.fail95).toBeLessThanOrEqual(taught.fail95);
  expect(ours.opsToStay ?? 999).toBeLessThan(taught.opsToStay ?? 999);
});

test('a plateau is walked to its middle from wherever there is light', () => {
  const row = walked('ridge', 'M', drawnBenches('M', [2000, 2039]));
  // own simulation computed with NumPy: none of 40
  expect(row.fail95).toBe(0);
});

test('a plateau that nobody knew of is found while walking, and its middle is sought', () => {
  let [found, good] = [0, 0];
  for (const { seed, hidden, known } of drawnBenches('M', [2000, 2029])) {
    const bench = practiceBench(hidden, seededUniform(seed + 1));
    const { verdict, track } = play(bench, ridgeWalk({ ...known, manyModes: false }));
    if (verdict.remarks.some(({ id }) => id === 'plateau')) found += 1;
    if (track.at(-1)!.share >= 0.95) good += 1;
  }
  // own simulation computed with NumPy: the same procedure as on a peak ends well on each of 40; one may be lost to a hand
  expect(good).toBeGreaterThanOrEqual(29);
  // where a few steps bring all the light nobody needs to know; where steps go on without an end it is found
  expect(found).toBeGreaterThanOrEqual(8);
});

for (const [what, change, where, mend] of [
  ['a place that is missing', (row) => delete row.sigma, 'sigma', '`0.02`'],
  ['a text for a number', (row) => Object.assign(row, { floor: 'low' }), 'floor', '`1e-4`'],
  ['a screw too few', (row) => Object.assign(row, { start: [0, 0, 0] }), 'start.3', '`0.05`'],
  [
    'a focal length of nothing',
    (row) => Object.assign(row.typed as object, { focal: 0 }),
    'typed.focal',
    '`0.008`',
  ],
  [
    'a peak that is a saddle',
    (row) =>
      Object.assign(row, {
        H: [
          [9, 10, 0, 0],
          [10, 9, 0, 0],
          [0, 0, 9, 0],
          [0, 0, 0, 9],
        ],
      }),
    ', H',
    'h11·h22',
  ],
] as readonly (readonly [string, (row: Record<string, unknown>) => unknown, string, string])[]) {
  test(`a file of benches with ${what} is refused at that place`, () => {
    const parts = refused(() => benchesIn(benchWith(change), 'mine.json', all));
    expect(parts).toHaveLength(1);
    expect(parts[0]!.where).toContain('mine.json: bench 1');
    expect(parts[0]!.where).toContain(where);
    expect(parts[0]!.mend).toContain(mend);
  });
}

test('what is no list of benches is refused once, and benches with nothing in them with a few places', () => {
  for (const text of ['', 'seed: 1', '{}', '[]', '3'])
    expect(refused(() => benchesIn(text, 'mine.json', all))).toHaveLength(1);
  expect(refused(() => benchesIn('[{}, null, 7]', 'mine.json', all)).length).toBeLessThan(6);
  expect(refused(() => benchesIn(shipped, 'V', [500, 600]))[0]!.mend).toContain('--seeds');
});

test('an option that is misspelt is answered with the ones there are', () => {
  expect(refused(() => requestOf(['--policy', 'rigde']))[0]!.mend).toContain(
    Object.keys(policies).join(', '),
  );
  expect(refused(() => requestOf(['--drawn', 'W']))[0]!.mend).toContain('V-foot');
  expect(refused(() => requestOf(['--polcy', 'ridge']))[0]!.mend).toContain('--policy');
  for (const seeds of ['9-3', '1', 'a-b', '-5-2'])
    expect(refused(() => requestOf([`--seeds=${seeds}`]))[0]!.mend).toContain('0-199');
  expect(requestOf(['--seeds', '3-3', '--json'])).toMatchObject({ seeds: [3, 3], json: true });
});

test('the page on the walk was counted with the settings that are shipped', () => {
  expect(readFileSync('docs/walk.md', 'utf8')).toContain(settingsText());
});
