import { gaugeGroups } from '@coreward/bench';
import type { JSX } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { PageHeading } from '../frame/page-heading.tsx';
import { gaugeTexts } from '../texts/gauge.ts';
import { GaugeDrawing } from './drawings/gauge-drawing.tsx';
import './gauge.css';

/** Every gauge by the part of the light line it serves, in the order of the light. */
export function GaugesPage(): JSX.Element {
  return (
    <>
      <PageHeading title={gaugeTexts.title} />
      <p>{gaugeTexts.intro}</p>
      <div className="gauge-groups">
        {gaugeGroups.map(({ part, gauges }) => (
          <section key={part} className="gauge-group">
            <h2>{gaugeTexts.parts[part]}</h2>
            <ul>
              {gauges.map(({ name, title, answers, needs }) => (
                <li key={name}>
                  <GaugeDrawing gauge={name} small />
                  <div>
                    <PageLink to={{ page: 'gauge', gauge: name, about: null }}>{answers}</PageLink>
                    <p className="quiet">
                      {title}. {gaugeTexts.needs(needs)}
                    </p>
                  </div>
                </li>
              ))}
            </ul>
          </section>
        ))}
      </div>
    </>
  );
}
