import { type Hazard, hazardEvidence, hazardTerms } from '@coreward/bench';
import type { JSX } from 'react';
import { Blocks } from '../launch/section-view.tsx';
import { cautionTexts } from '../texts/cautions.ts';
import { LevelMark } from './level-mark.tsx';
import './hazard-view.css';

/** One hazard whole: how grave, where, what to do now, its numbers, and what they rest on. */
export function HazardView({
  hazard,
  roomLength,
}: {
  readonly hazard: Hazard;
  readonly roomLength: number | null;
}): JSX.Element {
  return (
    <article className="hazard" id={hazard.id} data-level={hazard.level}>
      <h3>
        <Level hazard={hazard} /> {hazard.point}
      </h3>
      <p>{hazard.what}</p>
      <p className="do-now">
        {cautionTexts.doNow} <strong>{hazard.doNow}</strong>
      </p>
      <Blocks blocks={[{ kind: 'terms', rows: hazardTerms(hazard, roomLength) }]} />
      <details className="more">
        <summary>{cautionTexts.evidence}</summary>
        <Blocks blocks={hazardEvidence(hazard, roomLength)} />
      </details>
    </article>
  );
}

/** Hazards in a line or two each: what, and what to do. */
export function HazardLines({ hazards }: { readonly hazards: readonly Hazard[] }): JSX.Element {
  return (
    <ol className="hazard-lines">
      {hazards.map((hazard) => (
        <li key={hazard.id}>
          <Level hazard={hazard} /> {hazard.what} <strong>{hazard.doNow}</strong>
        </li>
      ))}
    </ol>
  );
}

function Level({ hazard: { level, invisible } }: { readonly hazard: Hazard }): JSX.Element {
  return (
    <span className="level">
      <LevelMark level={level} /> {level}
      {invisible && `, ${cautionTexts.invisible}`}
      {':'}
    </span>
  );
}
