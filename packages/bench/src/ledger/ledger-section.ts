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
      ...aboveAll(forecast),
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

/** Why a cause lets more than everything pass, where one does so in the digits that are shown. */
function aboveAll({ ledger }: Forecast): readonly Block[] {
  const above = ledger.filter(({ transmission }) => writeDecibel(transmission).startsWith('+'));
  if (above.length === 0) return [];
  const reasons = above.map(({ id, label }) => `${label}, for ${whyAbove(id)}`);
  const text = `Above 100 %, giving back what an earlier entry took too much: ${reasons.join('; ')}.`;
  return [{ kind: 'text', text }];
}

/** In a few words, of the causes of the overlap: nothing else can exceed 1. */
export function whyAbove(id: string): string {
  switch (id) {
    case 'aberration':
      return 'what the lens clips away suited the fibre least: judge it together with the clipping';
    case 'ellipticity':
      return 'one axis of the ellipse fits better than a round spot of the same area';
    case 'focus':
      return 'out of focus the light finds more modes';
    case 'aim':
      return 'beside the axis the light finds more modes';
    case 'mode-shape':
      return 'the modes take more than a spot against core and cone tells';
    default:
      return 'the spot reaches more modes than the one that suits LP01';
  }
}

/** Where the light went that the fibre does not guide; what is less than a thousandth is not named. */
export function notGuidedText({ notGuided, launch }: Forecast): string {
  const { beforeFacet, reflected, cladding, beyondCladding } = notGuided;
  const guided = Math.max(0, 1 - beforeFacet - reflected - cladding - beyondCladding);
  const before = launch.collimator === null ? 'before the fibre' : 'before the fibre, lens included';
  const fates: readonly (readonly [number, string])[] = [
    [guided, 'sets out in the core'],
    [beforeFacet, `is lost ${before}`],
    [reflected, 'is thrown back by the fibre’s end'],
    [cladding, 'strays into the cladding'],
    [beyondCladding, 'misses the fibre'],
  ];
  const told = fates.filter(([share]) => share >= 1e-3).map(([share, fate]) => `${shareText(share)} ${fate}`);
  return `Of the laser’s light ${told.join('; ')}.`;
}
