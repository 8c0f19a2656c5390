import { type Hazard, hazardEvidence, hazardTerms } from '@coreward/bench';
import type { JSX } from 'react';
import { Blocks } from '../launch/section-view.tsx';
import { cautionTexts } from '../texts/cautions.ts';
import { LevelMark } from './level-mark.tsx';
import './hazard-view.css';

/** One hazard: how grave, where, what to do now; its numbers and what they rest on unfold, and are printed. */
export function HazardView({
  hazard,
  roomLength,
  open = false,
}: {
  readonly hazard: Hazard;
  readonly roomLength: number | null;
  /** Whether its numbers are unfolded from the beginning. */
  readonly open?: boolean;
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
      <details className="numbers" open={open}>
        <summary>{cautionTexts.figures}</summary>
        <Blocks blocks={[{ kind: 'terms', rows: hazardTerms(hazard, roomLength) }]} />
        <details className="more">
          <summary>{cautionTexts.evidence}</summary>
          <Blocks blocks={hazardEvidence(hazard, roomLength)} />
        </details>
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
