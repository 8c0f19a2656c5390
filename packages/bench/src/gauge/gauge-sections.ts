import type { Section, Table } from '../ledger/section.ts';
import { type AnswerWords, answerWords } from './answer-words.ts';
import type { Gauge, GaugeResult, Readings } from './gauge.ts';
import { gauges } from './gauge-table.ts';
import { leadsElsewhere } from './leads.ts';
import { drawerEntries } from './to-drawer.ts';

/** What a gauge found, as people read it. */
export function gaugeSections(
  gauge: Gauge,
  result: GaugeResult,
  settings: Readings['settings'] = {},
): readonly Section[] {
  const { remarks } = result;
  const words = result.answers.map(answerWords);
  const table: Table = {
    kind: 'table',
    columns: [
      { heading: 'quantity', align: 'left' },
      { heading: 'value', align: 'right' },
      { heading: '90 % interval', align: 'right' },
      { heading: 'mostly from', align: 'left' },
    ],
    rows: words.map((answer) => ({ kind: 'cells', cells: cellsOf(answer) })),
  };
  const advice = [...words.flatMap(({ advice }) => advice ?? []), ...remarks];
  const items = [...new Set(advice)];
  const entries = drawerEntries(gauge, result, settings).map(
    ({ key, written, condition }) => `${key}: ${written}${condition === null ? '' : `, ${condition}`}`,
  );
  const elsewhere = leadsElsewhere(gauge.name);
  const leads = [...entries, ...(elsewhere === null ? [] : [elsewhere.words])];
  const found: Section = {
    heading: `Gauge: ${gauge.title}`,
    blocks: items.length === 0 ? [table] : [table, { kind: 'list', numbered: false, items }],
  };
  return leads.length === 0
    ? [found]
    : [
        found,
        {
          heading: 'For the drawer or the launch',
          blocks: [{ kind: 'list', numbered: false, items: leads }],
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

/** Which columns and settings its file holds; one without columns needs none. */
function givenAs({ takes, columns, settings }: Gauge): string {
  const named = (spec: { readonly name: string; readonly needed: boolean }): string =>
    spec.needed ? spec.name : `[${spec.name}]`;
  if (takes === 'table' && columns.length === 0)
    return `No file; settings ${settings.map(named).join(', ')}.`;
  const parts = [
    takes === 'picture'
      ? 'a PNG or JPEG'
      : takes === 'two pictures'
        ? 'two PNGs or JPEGs, forward then reverse'
        : `columns ${columns.map(named).join(', ')}`,
    ...(settings.length === 0 ? [] : [`settings ${settings.map(named).join(', ')}`]),
  ];
  return `File: ${parts.join('; ')}.`;
}

function cellsOf({ name, verdict, value, interval, from }: AnswerWords): readonly string[] {
  if (value === null || interval === null) return [name, verdict, '', ''];
  return [name, verdict === 'weak' ? `${value} (weak)` : value, interval, from[0] ?? 'exact'];
}
