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
  return {
    power: forecast.output.power,
    ledger: forecast.ledger,
    limits: verdictBlocks(forecast).slice(1),
    remarks: remarkSections(forecast),
    measureNext: { ...measurementSection(forecast), gauges: measurementsTold(forecast) },
    cautions: cautionSection(forecast),
    more: [
      spotSection(forecast),
      farEndSection(forecast),
      toleranceSection(forecast),
      { heading: 'On the bench', blocks: [{ kind: 'terms', rows: launchTerms(forecast.launch) }] },
      assumptionSection(forecast),
    ],
  };
}
