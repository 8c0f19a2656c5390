import { type Forecast, measurementSection, measurementsTold } from '@coreward/bench';
import type { JSX } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { launchTexts } from '../texts/launch.ts';
import { Blocks } from './section-view.tsx';

/** What to measure next, each with the way to its gauge. */
export function MeasureNext({
  id,
  forecast,
}: {
  readonly id: string;
  readonly forecast: Forecast;
}): JSX.Element {
  const { heading, blocks } = measurementSection(forecast);
  const told = measurementsTold(forecast);
  return (
    <section className="words">
      <h2>{heading}</h2>
      <Blocks blocks={blocks.filter(({ kind }) => kind === 'text')} />
      {told.length > 0 && (
        <ol>
          {told.map(({ text, gauge, quantity }) => (
            <li key={text}>
              {text}{' '}
              <PageLink to={{ page: 'gauge', gauge, about: { kind: 'launch', id }, fills: quantity }}>
                {launchTexts.toGauge(gauge)}
              </PageLink>
            </li>
          ))}
        </ol>
      )}
    </section>
  );
}
