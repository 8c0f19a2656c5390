import { expect, test } from 'vitest';
import { standingLine } from '../caution/standing-line.ts';
import { matchSections } from './match-sections.ts';
import type { Match, MatchedPair } from './matched.ts';

// An invented ranking of round numbers: nothing computed it.

const pair = (changes: Partial<MatchedPair> = {}): MatchedPair => ({
  laser: 'green',
  collimator: 'short one',
  fibre: 'patch lead',
  score: { value: 0.5, low: 0.4, high: 0.6 },
  power: { value: 5e-3, low: 4e-3, high: 6e-3 },
  guided: 0.6,
  fundamental: 0.4,
  vNumber: 3,
  reason: {
    id: 'spot-too-small',
    transmission: 0.631,
    againstBest: null,
    spotDiameter: 3e-6,
    suitedDiameter: 5e-6,
    fibreLength: 2,
  },
  connector: 'fits',
  connectorNote: null,
  ...changes,
});
const invented = (changes: Partial<Match> = {}): Match => ({
  purpose: 'total',
  path: [],
  pairs: [pair()],
  leftOut: [],
  ...changes,
});
const said = (match: Match, rows = 12) => JSON.stringify(matchSections(match, rows));

test('a pair is told with its figures, and the one reason with its cost', () => {
  const table = matchSections(invented(), 12)[1]!.blocks[0]!;
  expect(table).toMatchObject({
    kind: 'table',
    rows: [
      { kind: 'heading', text: '1. short one + patch lead' },
      {
        cells: [
          // 10 lg 0.631 = −2.0
          '   spot too small, 3 µm for 5 µm, 2.0 dB',
          '50 %',
          '40 to 60 %',
          '5 mW',
          '4.0 to 6.0 mW',
        ],
      },
    ],
  });
});

test('a pair behind the best is told by what it loses more', () => {
  const reason = { ...pair().reason, transmission: 0.5, againstBest: 0.631 };
  expect(said(invented({ pairs: [pair(), pair({ reason })] }))).toContain('3 µm for 5 µm, 2.0 dB more');
  const alike = { ...reason, againstBest: 0.99 };
  expect(said(invented({ pairs: [pair(), pair({ reason: alike })] }))).toContain(
    'as good as the best, within 0.05 dB',
  );
});

test('a plug that needs attention is marked in words', () => {
  for (const connector of ['needs an adapter', 'must not meet'] as const)
    expect(said(invented({ pairs: [pair({ connector })] }))).toContain(`+ patch lead (${connector})`);
  expect(said(invented({ pairs: [pair({ connector: 'unknown' })] }))).not.toContain('lead (');
});

test('what the ranking goes by stands on top, and what a meter makes of it', () => {
  expect(said(invented())).toContain('ranked by all guided light');
  const clean = said(invented({ purpose: 'lp01' }));
  expect(clean).toContain('ranked by power in LP01 at the far end');
  expect(clean).toContain('other modes may come with it, and a power meter there shows them, too');
});

test('that ranges are estimates, who decides, and a path that is not told are said on every page', () => {
  for (const match of [invented(), invented({ pairs: [] })]) {
    expect(said(match)).toContain('The ranges are estimates');
    expect(said(match)).toContain(standingLine);
    expect(said(match)).toContain('no path');
  }
});

test('each laser has its own ranking, in the order of its best pair', () => {
  const pairs = [pair({ laser: 'red' }), pair(), pair({ laser: 'red', fibre: 'other' })];
  const headings = matchSections(invented({ pairs }), 1).map(({ heading }) => heading);
  expect(headings.slice(1, 3)).toEqual(['For red', 'For green']);
  expect(said(invented({ pairs }), 1)).toContain('1 more; `--all` prints them.');
});

test('what is left out is told with its reason', () => {
  const leftOut = [{ laser: 'far red', collimator: 'short one', fibre: 'patch lead', why: 'no glass' }];
  expect(said(invented({ leftOut }))).toContain('far red + short one + patch lead: no glass.');
});

test('ranked by LP01, a pair says how much of what is guided LP01 is, where it is not nearly all', () => {
  // 0.4/0.6 = 67 %
  expect(said(invented({ purpose: 'lp01' }))).toContain('2.0 dB; LP01 is 67 % of what is guided');
  expect(said(invented())).not.toContain('of what is guided');
  const clean = pair({ guided: 0.6, fundamental: 0.594 });
  expect(said(invented({ purpose: 'lp01', pairs: [clean] }))).not.toContain('of what is guided');
});
