import type { Forecast } from '../forecast/expected.ts';
import { writeDecibel } from '../units/write.ts';
import { figure, intervalText, shareText } from './figures.ts';
import { ledgerLines } from './ledger-lines.ts';
import type { Block, Row, Section } from './section.ts';

/** The ledger as a staircase: a row for each loss, and what is left behind it in figures and as a bar. */
export function ledgerSection(forecast: Forecast): Section {
  const { launch, output } = forecast;
  const all = output.fractionOfLaser;
  const rows: Row[] = [
    {
      kind: 'cells',
      cells: ['leaves the laser', '', '', '', figure(launch.laser.power.value, 'power', 3), { bar: 1 }],
    },
  ];
  for (const { heading, lines } of ledgerLines(forecast)) {
    const losses = lines.filter(({ costsNothing }) => !costsNothing);
    if (losses.length > 0) rows.push({ kind: 'heading', text: heading });
    for (const { label, loss, passes, interval, power, left } of losses) {
      rows.push({ kind: 'cells', cells: [`  ${label}`, loss, passes, interval, power, { bar: left }] });
    }
  }
  rows.push({ kind: 'rule' });
  rows.push({
    kind: 'cells',
    cells: [
      'all together',
      writeDecibel(all.value),
      shareText(all.value),
      intervalText(all, 'fraction') ?? '',
      figure(output.power.value, 'power', 3),
      { bar: all.value },
    ],
  });
  return {
    heading: 'Ledger: what each part lets through',
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: '', align: 'left' },
          { heading: 'loss', align: 'right' },
          { heading: 'passes', align: 'right' },
          { heading: '90 % range', align: 'right' },
          { heading: 'left', align: 'right' },
          { heading: '', align: 'left' },
        ],
        rows,
      },
      ...free(forecast),
      { kind: 'text', text: notGuidedText(forecast) },
    ],
  };
}

/** The entries that take nothing, named so that nobody misses them. */
function free(forecast: Forecast): readonly Block[] {
  const labels = ledgerLines(forecast)
    .flatMap(({ lines }) => lines)
    .filter(({ costsNothing }) => costsNothing)
    .map(({ label }) => label);
  return labels.length === 0
    ? []
    : [{ kind: 'text', text: `These cost nothing here: ${labels.join(', ')}.` }];
}

/** Where the light went that the fibre does not guide; what is less than a thousandth is not named. */
export function notGuidedText({ notGuided, launch }: Forecast): string {
  const { beforeFacet, reflected, cladding, beyondCladding } = notGuided;
  const guided = Math.max(0, 1 - beforeFacet - reflected - cladding - beyondCladding);
  const before = launch.collimator === null ? 'before the fibre' : 'before the fibre, lens included';
  const fates: readonly (readonly [number, string])[] = [
    [guided, 'sets out in the core'],
    [beforeFacet, `is lost ${before}`],
    [reflected, "is thrown back by the fibre's end"],
    [cladding, 'strays into the cladding'],
    [beyondCladding, 'misses the fibre'],
  ];
  const told = fates.filter(([share]) => share >= 1e-3).map(([share, fate]) => `${shareText(share)} ${fate}`);
  return `Of the laser's light ${told.join('; ')}.`;
}
