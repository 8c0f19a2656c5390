import type { JSX } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { launchTexts } from '../texts/launch.ts';
import { Blocks } from './section-view.tsx';
import type { ToldForecast } from './told-forecast.ts';

/** What to measure next, each with the way to its gauge. */
export function MeasureNext({
  id,
  measureNext: { heading, blocks, gauges },
}: {
  readonly id: string;
  readonly measureNext: ToldForecast['measureNext'];
}): JSX.Element {
  return (
    <section className="words">
      <h2>{heading}</h2>
      <Blocks blocks={blocks.filter(({ kind }) => kind === 'text')} />
      {gauges.length > 0 && (
        <ol>
          {gauges.map(({ text, gauge, quantity }) => (
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
