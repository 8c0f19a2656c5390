import { noiseWords, rateWords, readingWords } from '@coreward/bench';
import type { InstrumentDescription } from '@coreward/contract';
import type { JSX } from 'react';
import { instrumentTexts } from '../texts/instrument.ts';

/** What an instrument reads now, large, with its figures and what is amiss. */
export function InstrumentFacts({ instrument }: { readonly instrument: InstrumentDescription }): JSX.Element {
  const { unit, state, lastReading, rate_Hz, noise, floor, saturation, trouble } = instrument;
  // of late: they say nothing once nothing comes
  const isReading = state === 'reading';
  const words = instrumentTexts.facts;
  const value = lastReading?.value ?? null;
  const light = value === null ? null : value - (floor ?? 0);
  return (
    <>
      <p className="reading-now">
        {value === null
          ? lastReading === null
            ? instrumentTexts.noReading
            : instrumentTexts.nothingSince
          : readingWords(value, unit)}
      </p>
      {lastReading?.saturated === true && <p className="full">{instrumentTexts.full}</p>}
      {trouble !== null && (
        <p className="refusal" role="status">
          {trouble.where}: {trouble.what}. {trouble.mend}
        </p>
      )}
      <dl className="figures">
        {isReading && rate_Hz !== null && <Figure word={words.rate} text={rateWords(rate_Hz)} />}
        {isReading && noise !== null && <Figure word={words.noise} text={noiseWords(noise, unit, light)} />}
        {unit !== 'step' && (
          <>
            <Figure word={words.floor} text={floor === null ? words.unknown : readingWords(floor, unit)} />
            <Figure
              word={words.saturation}
              text={saturation === null ? words.unknown : readingWords(saturation, unit)}
            />
          </>
        )}
      </dl>
    </>
  );
}

function Figure({ word, text }: { readonly word: string; readonly text: string }): JSX.Element {
  return (
    <div>
      <dt>{word}</dt>
      <dd>{text}</dd>
    </div>
  );
}
