import type { Section, Table } from '../ledger/section.ts';
import type { Dimension } from '../units/dimension.ts';
import { writeInterval, writeQuantity, writeValue } from '../units/write.ts';
import type { GaugeAnswer } from './answer.ts';
import type { Gauge, GaugeResult } from './gauge.ts';
import { gauges } from './gauge-table.ts';
import { drawerEntries } from './to-drawer.ts';

/** What a gauge found, as people read it. */
export function gaugeSections(gauge: Gauge, result: GaugeResult): readonly Section[] {
  const { answers, remarks } = result;
  const table: Table = {
    kind: 'table',
    columns: [
      { heading: 'quantity', align: 'left' },
      { heading: 'value', align: 'right' },
      { heading: '90 % interval', align: 'right' },
      { heading: 'mostly from', align: 'left' },
    ],
    rows: answers.map((answer) => ({ kind: 'cells', cells: cellsOf(answer) })),
  };
  const advice = [
    ...answers.flatMap(({ because, add }) =>
      because === null ? [] : [`${sentence(because)} ${add ?? ''}`.trim()],
    ),
    ...remarks,
  ];
  const items = [...new Set(advice)];
  const entries = drawerEntries(gauge, result).map(({ key, written }) => `${key}: ${written}`);
  const found: Section = {
    heading: `Gauge: ${gauge.title}`,
    blocks: items.length === 0 ? [table] : [table, { kind: 'list', numbered: false, items }],
  };
  return entries.length === 0
    ? [found]
    : [
        found,
        {
          heading: 'For the drawer or the launch',
          blocks: [{ kind: 'list', numbered: false, items: entries }],
        },
      ];
}

/** Every gauge with what it answers and needs. */
export function gaugeListSections(): readonly Section[] {
  return [
    {
      heading: 'Gauges',
      blocks: [
        {
          kind: 'list',
          numbered: false,
          items: gauges.map(
            (gauge) => `${gauge.name}: ${gauge.answers}. Needs ${gauge.needs}. ${givenAs(gauge)}`,
          ),
        },
      ],
    },
  ];
}

/** Which columns and settings its file holds. */
function givenAs({ takes, columns, settings }: Gauge): string {
  const named = (spec: { readonly name: string; readonly needed: boolean }): string =>
    spec.needed ? spec.name : `[${spec.name}]`;
  const parts = [
    takes === 'picture' ? 'a PNG or JPEG' : `columns ${columns.map(named).join(', ')}`,
    ...(settings.length === 0 ? [] : [`settings ${settings.map(named).join(', ')}`]),
  ];
  return `File: ${parts.join('; ')}.`;
}

function cellsOf(answer: GaugeAnswer): readonly string[] {
  const { quantity, value, uncertainty, low, high, verdict, contributions, at } = answer;
  const { name: plain, dimension } = told(quantity);
  const name = at === undefined ? plain : `${plain} at ${writeValue(at, 'length')}`;
  if (value === null || uncertainty === null || low === null || high === null) return [name, verdict, '', ''];
  const mark = verdict === 'weak' ? ' (weak)' : '';
  return [
    name,
    `${writeQuantity({ value, uncertainty, shape: 'normal', origin: 'measured' }, dimension)}${mark}`,
    writeInterval(low, high, dimension, 3),
    contributions[0]?.from ?? 'exact',
  ];
}

/** `radius1e2_m` as a name for people and what it measures. */
function told(quantity: string): { readonly name: string; readonly dimension: Dimension } {
  for (const [ending, dimension] of endings)
    if (quantity.endsWith(ending)) return { name: quantity.slice(0, -ending.length), dimension };
  return { name: quantity, dimension: 'number' };
}

const endings: readonly (readonly [string, Dimension])[] = [
  ['_rad_per_turn', 'anglePerTurn'],
  ['_A_per_W', 'responsivity'],
  ['_per_m', 'attenuation'],
  ['_m_per_turn', 'screwPitch'],
  ['_m', 'length'],
  ['_rad', 'angle'],
  ['_W', 'power'],
  ['_A', 'current'],
  ['_s', 'time'],
  ['_turns', 'turns'],
  ['_nepers', 'loss'],
];

const sentence = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}.`;
