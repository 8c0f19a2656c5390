import { fiveLinesLaunch, observingLoftDrawer, observingLoftLaunch } from '@coreward/bench';
import { expect, test } from 'vitest';
import { type FakeFile, fakeShell } from './fake-shell.ts';
import { run } from './run.ts';
import type { Shell } from './shell.ts';
import { displayWidth } from './text/display-width.ts';

async function type(
  line: string,
  files: Readonly<Record<string, FakeFile>> = {},
  changes: Partial<Shell> = {},
) {
  const shell = fakeShell(files, changes);
  const code = await run(line === '' ? [] : line.split(' '), shell);
  return { code, printed: shell.printed(), talked: shell.talked(), files: shell.files };
}

const examples = { five: fiveLinesLaunch, loft: observingLoftLaunch };

test('help says what there is', async () => {
  const { code, printed } = await type('--help');
  expect(code).toBe(0);
  for (const word of [
    'station',
    'forecast',
    'export',
    'schema',
    'example',
    '--version',
    'coreward example',
  ]) {
    expect(printed).toContain(word);
  }
});

for (const line of ['--help', 'help', 'help forecast', 'forecast --help', '--version']) {
  test(`\`coreward ${line}\` is answered on standard output`, async () => {
    const { code, printed, talked } = await type(line);
    expect(code).toBe(0);
    expect(printed).toMatch(line === '--version' ? /^coreward \d+\.\d+\.\d+\n$/u : /^Usage: coreward/u);
    expect(talked).toBe('');
  });
}

// [what was typed, what is said of it]
const slips = [
  ['forcast x', 'unknown command `forcast`.\n  mend: Write `forecast`.'],
  ['forecast --jsno five', 'unknown option `--jsno`.\n  mend: Write `--json`.'],
  ['forecast', 'missing required argument `file`.\n  mend: Type `coreward forecast --help`'],
  ['forecast five loft', 'mend: Put a name that has spaces in it between quotes.'],
  ['schema lunch', '`lunch` is not known here.\n  mend: Write `launch` or `drawer`.'],
  ['--quiet', 'unknown option `--quiet`.\n  mend: Type `coreward --help`'],
] as const;

for (const [line, said] of slips) {
  test(`\`coreward ${line}\` is refused with a mend`, async () => {
    const { code, printed, talked } = await type(line, examples);
    expect(code).toBe(2);
    expect(printed).toBe('');
    expect(talked).toContain(said);
  });
}

for (const name of ['five', 'loft']) {
  for (const width of [80, 60]) {
    test(`the forecast of example ${name} fits ${width} columns`, async () => {
      const { code, printed } = await type(`forecast ${name}`, examples, { width });
      expect(code).toBe(0);
      expect(printed.split('\n').filter((line) => displayWidth(line) > width)).toEqual([]);
    });
  }
}

test('a forecast begins with the name and the verdict, and never is a bare figure', async () => {
  const { printed } = await type('forecast loft', examples);
  const [name, verdict] = printed.split('\n');
  expect(name).toBe('green guide light to the observing loft');
  expect(verdict).toMatch(/^ {2}\S+ mW leaves the far end \(\S+ to \S+ mW, 90 %\): \d+ % of the laser\.$/u);
});

test('text holds no escape unless bold is wanted, and then only for headings', async () => {
  expect((await type('forecast five', examples)).printed).not.toContain('\u001b');
  const { printed } = await type('forecast five', examples, { bold: true });
  expect(printed).toContain('\u001b[1mCautions\u001b[22m\n');
  expect(printed.replaceAll('\u001b[1m', '').replaceAll('\u001b[22m', '')).not.toContain('\u001b');
});

test('JSON is complete and alone on standard output', async () => {
  const { code, printed, talked } = await type('forecast loft --json', examples);
  expect(code).toBe(0);
  expect(talked).toBe('');
  const json = JSON.parse(printed);
  // what the text says, DESIGN's law of the ledger: the transmissions multiply to the share of the laser
  const product = json.ledger.reduce(
    (all: number, { transmission }: { transmission: number }) => all * transmission,
    1,
  );
  // a product of some twenty doubles
  expect(product).toBeCloseTo(json.output.fractionOfLaser, 12);
  expect(printed).not.toContain('NaN');
});

test('a launch comes from standard input as well', async () => {
  const { code, printed } = await type('forecast -', { '-': fiveLinesLaunch });
  expect(code).toBe(0);
  expect(printed).toContain('leaves the far end');
});

test('everything refused in a document is said at once, a block each, with exit code 2', async () => {
  const broken = fiveLinesLaunch.replace('520 nm', '520').replace('8 mm', 'wide');
  const { code, printed, talked } = await type('forecast x.yaml', { 'x.yaml': broken });
  expect(code).toBe(2);
  expect(printed).toBe('');
  const blocks = talked.trimEnd().split('\n\n');
  expect(blocks).toHaveLength(2);
  for (const block of blocks) expect(block).toMatch(/^x\.yaml:\d+:\d+ \S.*\n {2}\S[\s\S]*\n {2}mend: [A-Z]/u);
});

test('what no formula covers is refused at its line, as the document names it', async () => {
  // V = π · 0.5 µm · 0.01/520 nm = 0.030, below the 0.3 that the mode solvers cover
  const loose = fiveLinesLaunch.replace('type: G.652.D', 'core diameter: 0.5 µm, numerical aperture: 0.01');
  const { code, talked } = await type('forecast x.yaml', { 'x.yaml': loose });
  expect(code).toBe(2);
  expect(talked).toMatch(/^x\.yaml:4:25 fibre\.core diameter\n/u);
  expect(talked).toContain('mend: Write `core diameter: 5.02 µm` or more');
});

test('a drawer that is given as a launch is told apart', async () => {
  const { code, talked } = await type('forecast x.yaml', { 'x.yaml': observingLoftDrawer });
  expect(code).toBe(2);
  expect(talked).toContain('a drawer, not a launch');
});

test('a document cannot move the cursor', async () => {
  const { printed, talked } = await type('forecast x', {
    x: fiveLinesLaunch.replace('coreward: 1', 'coreward: 1\nname: "a\\e[2Jb"'),
  });
  expect(printed + talked).not.toContain('\u001b');
});

for (const document of ['', ' launch', ' drawer']) {
  test(`\`coreward schema${document}\` prints a JSON Schema of 2020-12`, async () => {
    const { code, printed } = await type(`schema${document}`);
    expect(code).toBe(0);
    expect(JSON.parse(printed)).toMatchObject({
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title: document === ' drawer' ? 'Coreward drawer' : 'Coreward launch',
    });
  });
}

test('the example is written, and what is to be typed next works', async () => {
  const { code, printed, files } = await type('example bench');
  expect(code).toBe(0);
  expect([...files.keys()]).toEqual(['bench/observing-loft.launch.yaml', 'bench/observing-loft.drawer.yaml']);
  const next = /^ {2}coreward (forecast .*)$/mu.exec(printed)?.[1] ?? '';
  expect((await type(next, Object.fromEntries(files))).code).toBe(0);
});

test('an example never overwrites, and writes nothing if it cannot write all', async () => {
  const mine = { 'observing-loft.drawer.yaml': 'mine' };
  const { code, talked, files } = await type('example', mine);
  expect(code).toBe(2);
  expect(talked).toContain('mend: Move it away, or name another folder');
  expect(Object.fromEntries(files)).toEqual(mine);
});

for (const outcome of [
  { kind: 'forbidden' },
  { kind: 'no folder' },
  { kind: 'exists' },
  { kind: 'failed', reason: 'EIO' },
] as const) {
  test(`an example that cannot be written (${outcome.kind}) is refused with a mend`, async () => {
    const { code, talked } = await type('example', {}, { create: async () => outcome });
    expect(code).toBe(2);
    expect(talked).toContain('mend: ');
  });
}

test('in a checkout the hints are those that work there', async () => {
  const { printed } = await type('example', {}, { typed: 'npx coreward' });
  expect(printed).toContain('npx coreward forecast observing-loft.launch.yaml');
});

test('a fault of ours says so, with exit code 70, and its detail only when asked for', async () => {
  const files = { x: new Error('the lens fell off') };
  const { code, printed, talked } = await type('forecast x', files);
  expect(code).toBe(70);
  expect(printed).toBe('');
  expect(talked).toContain('This is a fault in Coreward, not in what you did: the lens fell off');
  expect(talked).toContain('COREWARD_DEBUG=1');
  expect(talked).not.toMatch(/^ +at /mu);
  expect((await type('forecast x', files, { debug: true })).talked).toMatch(/^ +at /mu);
});

test('every help fits 80 columns, cuts no quantity in two, and tells nobody of an empty list', async () => {
  const commands = [
    '',
    'station',
    'forecast',
    'match',
    'walk',
    'gauge',
    'caution',
    'limit',
    'schema',
    'example',
    'export',
    'import',
    'instruments',
    'devices',
  ];
  for (const command of commands) {
    const shell = fakeShell();
    expect(await run([...(command === '' ? [] : [command]), '--help'], shell)).toBe(0);
    const help = shell.printed();
    expect(help.split('\n').filter((line) => displayWidth(line) > 80)).toEqual([]);
    expect(help).not.toContain('default: []');
    // a number in quotation marks at the end of a line has its unit on the next
    expect(help).not.toMatch(/"[\d.]+$/mu);
  }
});
