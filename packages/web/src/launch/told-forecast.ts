import {
  assumptionSection,
  type Block,
  cautionSection,
  type Expected,
  type Forecast,
  farEndSection,
  type LedgerEntry,
  launchTerms,
  type MeasurementTold,
  measurementSection,
  measurementsTold,
  remarkSections,
  type Section,
  spotSection,
  toleranceSection,
  unbroken,
  verdictBlocks,
} from '@coreward/bench';

/** What the page shows of a forecast, in words already: they are written where the forecast is worked out, not on the page. */
export interface ToldForecast {
  /** W of guided light that leaves the far end. */
  readonly power: Expected;
  readonly ledger: readonly LedgerEntry[];
  /** What keeps light out. */
  readonly limits: readonly Block[];
  readonly remarks: readonly Section[];
  readonly measureNext: Section & { readonly gauges: readonly MeasurementTold[] };
  readonly cautions: Section;
  /** What is folded away at first. */
  readonly more: readonly Section[];
}

/** Made in the worker, which leaves the page a hundred functions shorter and the hand undisturbed. */
export function toldForecast(forecast: Forecast): ToldForecast {
  const { blocks, heading } = measurementSection(forecast);
  return {
    power: forecast.output.power,
    ledger: forecast.ledger,
    limits: verdictBlocks(forecast).slice(1).map(unbrokenBlock),
    remarks: remarkSections(forecast).map(unbrokenSection),
    measureNext: {
      heading,
      blocks,
      gauges: measurementsTold(forecast).map((told) => ({ ...told, text: unbroken(told.text) })),
    },
    cautions: unbrokenSection(cautionSection(forecast)),
    more: [
      spotSection(forecast),
      farEndSection(forecast),
      toleranceSection(forecast),
      { heading: 'On the bench', blocks: [{ kind: 'terms' as const, rows: launchTerms(forecast.launch) }] },
      assumptionSection(forecast),
    ].map(unbrokenSection),
  };
}

const unbrokenSection = ({ heading, blocks }: Section): Section => ({
  heading,
  blocks: blocks.map(unbrokenBlock),
});

/** The gaps in the lines of a table and of a figure are their own. */
function unbrokenBlock(block: Block): Block {
  switch (block.kind) {
    case 'text':
      return { ...block, text: unbroken(block.text) };
    case 'terms':
      return { ...block, rows: block.rows.map(({ term, text }) => ({ term, text: unbroken(text) })) };
    case 'list':
      return { ...block, items: block.items.map(unbroken) };
    case 'table':
      return block;
  }
}
