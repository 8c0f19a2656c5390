import type { ExpectedOutput, Forecast } from '../forecast/expected.ts';
import { writeValue } from '../units/write.ts';
import { expectedText, expectedTexts } from './figures.ts';
import type { Section, Term } from './section.ts';

/** What leaves the far end, and what a meter there would show. */
export function farEndSection(forecast: Forecast): Section {
  const { output, meter } = forecast;
  const rows: Term[] = [
    {
      term: 'power',
      text: `${expectedText(output.power, 'power')}; of the laser ${expectedText(output.fractionOfLaser, 'fraction')}`,
    },
    { term: 'meter', text: meterText(meter) },
    { term: 'beam', text: outputBeamText(output) },
  ];
  return { heading: 'Out of the far end', blocks: [{ kind: 'terms', rows }] };
}

function meterText({ reading, guided, claddingReaches }: Forecast['meter']): string {
  if (!claddingReaches) return 'shows the guided light; what strayed into the cladding does not get that far';
  const [shown, ofIt] = expectedTexts(reading, guided, 'power');
  return shown === ofIt
    ? `shows ${shown}, a little of it perhaps light in the cladding, which gets that far`
    : `shows ${shown}: light in the cladding gets that far, too; only ${ofIt} of it is guided`;
}

function outputBeamText({ diameter, fullDivergence, collimated, shape }: ExpectedOutput): string {
  const size = writeValue(diameter, 'length', 2);
  const spread = writeValue(fullDivergence, 'angle', 2);
  const mixture = shape === 'mode' ? '' : '; several modes share the light, so both are its second moments';
  return `${size} across ${collimated ? 'at the output lens' : 'at the bare end'}, spreading by ${spread} (full angle)${mixture}`;
}
