import type { Forecast } from '../forecast/expected.ts';
import { fewModedBelow } from '../forecast/fibre-taker.ts';
import { assumptionSection, measurementSection, remarkSections } from './advice-sections.ts';
import { cautionSection } from './caution-section.ts';
import { farEndSection } from './far-end-section.ts';
import { launchTerms } from './launch-terms.ts';
import { ledgerSection } from './ledger-section.ts';
import type { Section } from './section.ts';
import { spotSection } from './spot-section.ts';
import { toleranceSection } from './tolerance-section.ts';
import { howToRead, verdictBlocks } from './verdict.ts';

/** A forecast in words and tables: the verdict, then all in the order in which light travels, the advice behind it. */
export function forecastSections(forecast: Forecast): readonly Section[] {
  const { launch, fibre } = forecast;
  const several = fibre.lpModes !== null && fibre.lpModes > 1 && fibre.vNumber.value < fewModedBelow;
  return [
    { heading: launch.name, blocks: verdictBlocks(forecast) },
    {
      heading: 'On the bench',
      blocks: [
        { kind: 'text', text: howToRead },
        { kind: 'terms', rows: launchTerms(launch, several ? 'the most light in LP01' : 'the most light') },
      ],
    },
    spotSection(forecast),
    ledgerSection(forecast),
    farEndSection(forecast),
    ...remarkSections(forecast),
    toleranceSection(forecast),
    measurementSection(forecast),
    assumptionSection(forecast),
    cautionSection(forecast),
  ];
}
