import { type Hazard, hazardEvidence, hazardTerms, unbroken } from '@coreward/bench';
import type { JSX } from 'react';
import { Blocks } from '../launch/section-view.tsx';
import { cautionTexts } from '../texts/cautions.ts';
import { Level } from './hazard-lines.tsx';

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
      <p>{unbroken(hazard.what)}</p>
      <p className="do-now">
        {cautionTexts.doNow} <strong>{unbroken(hazard.doNow)}</strong>
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
