import { notEvaluated } from '../forecast/forecast.ts';
import { lossText } from '../forecast/remark-text.ts';
import { deferral } from '../ledger/caution-section.ts';
import { expectedText } from '../ledger/figures.ts';
import type { Section } from '../ledger/section.ts';
import type { Match, MatchedPair, MatchPurpose } from './matched.ts';
import { reasonText } from './reason.ts';

const goesBy: Readonly<Record<MatchPurpose, string>> = {
  total: 'all guided light that leaves the far end, as a share of the laser’s',
  lp01: 'light in the fundamental mode LP01 at the far end, as a share of the laser’s',
};

/** A ranking in words: laser by laser, the best pair first. */
export function matchSections(match: Match, mostRows: number): readonly Section[] {
  const { purpose, pairs, leftOut } = match;
  const lasers = [...new Set(pairs.map(({ laser }) => laser))];
  return [
    {
      heading: 'What goes with what',
      blocks: [
        {
          kind: 'text',
          text: `${pairs.length} ${pairs.length === 1 ? 'combination' : 'combinations'} ranked by ${goesBy[purpose]}. Each with the best focus, the fibre walked by hand. In brackets: an estimate of the range that holds the truth nine times in ten; \`forecast\` computes it.`,
        },
      ],
    },
    ...lasers.map((laser) =>
      laserSection(
        laser,
        pairs.filter((pair) => pair.laser === laser),
        mostRows,
      ),
    ),
    ...(leftOut.length === 0
      ? []
      : [
          {
            heading: 'Left out',
            blocks: [
              {
                kind: 'list' as const,
                numbered: false,
                items: leftOut
                  .slice(0, mostRows)
                  .map(
                    ({ laser, collimator, fibre, why }) =>
                      `${[laser, collimator, fibre].join(' + ')}: ${why}.`,
                  ),
              },
              ...(leftOut.length <= mostRows ? [] : [more(leftOut.length - mostRows)]),
            ],
          },
        ]),
    {
      heading: 'Cautions',
      blocks: [
        { kind: 'list', numbered: false, items: [`${notEvaluated.level}: ${notEvaluated.text}`] },
        { kind: 'text', text: deferral },
      ],
    },
  ];
}

const more = (count: number) => ({ kind: 'text' as const, text: `${count} more; \`--all\` prints them.` });

function laserSection(laser: string, pairs: readonly MatchedPair[], mostRows: number): Section {
  return {
    heading: `For ${laser}`,
    blocks: [
      { kind: 'list', numbered: true, items: pairs.slice(0, mostRows).map(pairText) },
      ...(pairs.length <= mostRows ? [] : [more(pairs.length - mostRows)]),
    ],
  };
}

/** `red one, 6.2 mm + loft line: 74 % (62 to 80 %), 8.5 mW (6.8 to 10 mW). Not better because of …` */
function pairText({
  collimator,
  fibre,
  score,
  power,
  reason,
  connector,
  connectorNote,
}: MatchedPair): string {
  const lens = collimator === 'none' ? 'no collimator' : collimator;
  const plug =
    connectorNote ?? (connector === 'unknown' ? null : connector === 'fits' ? null : `${connector}.`);
  const said = [
    `${lens} + ${fibre}: ${expectedText(score, 'fraction')}, ${expectedText(power, 'power')}.`,
    `Not better because of: ${reasonText(reason)} (${lossText(reason.transmission)}).`,
    ...(plug === null ? [] : [plug]),
  ];
  return said.join(' ');
}
