import { notEvaluated } from '../caution/not-evaluated.ts';
import { cautionSection } from '../ledger/caution-section.ts';
import { digitsFor, figure, intervalText } from '../ledger/figures.ts';
import type { Block, Row, Section } from '../ledger/section.ts';
import type { LeftOut, Match, MatchedInterval, MatchedPair, MatchPurpose } from './matched.ts';
import { otherModes } from './other-modes.ts';
import { reasonLine } from './reason.ts';
import { usableFirstText } from './usable-first.ts';

const goesBy: Readonly<Record<MatchPurpose, string>> = {
  total: 'all guided light that leaves the far end, as a share of the laser’s',
  lp01: 'power in LP01 at the far end, as a share of the laser’s; other modes may come with it, and a power meter there shows them, too',
};

/** A ranking in words and tables: laser by laser, the best pair first. */
export function matchSections(match: Match, mostRows: number): readonly Section[] {
  const { pairs, leftOut } = match;
  const lasers = [...new Set(pairs.map(({ laser }) => laser))];
  return [
    { heading: 'What goes with what', blocks: introduction(match) },
    ...lasers.map((laser) => {
      const own = pairs.filter((pair) => pair.laser === laser);
      return {
        heading: `For ${laser}`,
        blocks: [ranking(own.slice(0, mostRows), match.purpose), ...more(own, mostRows)],
      };
    }),
    ...leftOutSection(leftOut, mostRows),
    cautionSection({ cautions: [notEvaluated] }),
  ];
}

function introduction({ purpose, pairs, path }: Match): readonly Block[] {
  const counted = `${pairs.length} ${pairs.length === 1 ? 'combination' : 'combinations'}`;
  return [
    `${counted} ranked by ${goesBy[purpose]}. Each with the best focus, walked by hand.`,
    'The ranges are estimates: nine times in ten they hold the truth. `forecast` computes them.',
    ...(pairs.some(({ connector }) => connector === 'must not meet')
      ? [`${usableFirstText} One has an angled end and the other a flat one.`]
      : []),
    ...(path.length === 0
      ? ['The drawer tells no path: every lens is taken to stand right at the laser’s exit.']
      : []),
  ].map((text) => ({ kind: 'text', text }));
}

function ranking(pairs: readonly MatchedPair[], purpose: MatchPurpose): Block {
  return {
    kind: 'table',
    columns: [
      { heading: 'why not more', align: 'left' },
      { heading: 'share', align: 'right' },
      { heading: '90 % range', align: 'right' },
      { heading: 'power', align: 'right' },
      { heading: '90 % range', align: 'right' },
    ],
    rows: pairs.flatMap((pair, place) => pairRows(pair, place, purpose)),
  };
}

/** Which pair, with a mark where the plug needs attention; under it the reason with its cost, and the figures. */
function pairRows(pair: MatchedPair, place: number, purpose: MatchPurpose): readonly Row[] {
  const { collimator, fibre, score, power, reason, connector } = pair;
  const lens = collimator === 'none' ? 'no lens' : collimator;
  const others = otherModes(pair, purpose);
  const mark = connector === 'needs an adapter' || connector === 'must not meet' ? ` (${connector})` : '';
  return [
    { kind: 'heading', text: `${place + 1}. ${lens} + ${fibre}${mark}` },
    {
      kind: 'cells',
      cells: [
        `   ${reasonLine(reason)}${others === null ? '' : `; ${others}`}`,
        ...figures(score, 'fraction'),
        ...figures(power, 'power'),
      ],
    },
  ];
}

function figures(interval: MatchedInterval, dimension: 'fraction' | 'power'): readonly [string, string] {
  const value = figure(interval.value, dimension, digitsFor(interval, dimension));
  return [value, intervalText(interval, dimension) ?? ''];
}

function leftOutSection(leftOut: readonly LeftOut[], mostRows: number): readonly Section[] {
  if (leftOut.length === 0) return [];
  const items = leftOut
    .slice(0, mostRows)
    .map(({ laser, collimator, fibre, why }) => `${laser} + ${collimator} + ${fibre}: ${why}.`);
  return [
    { heading: 'Left out', blocks: [{ kind: 'list', numbered: false, items }, ...more(leftOut, mostRows)] },
  ];
}

function more(all: readonly unknown[], mostRows: number): readonly Block[] {
  if (all.length <= mostRows) return [];
  return [{ kind: 'text', text: `${all.length - mostRows} more; \`--all\` prints them.` }];
}
