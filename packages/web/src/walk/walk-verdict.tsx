import {
  remarkText,
  truthTexts,
  verdictText,
  type WalkMeter,
  type WalkNow,
  type WalkTruth,
} from '@coreward/bench';
import type { JSX } from 'react';
import { walkTexts } from '../texts/walk.ts';

/** How the climb ended, where a practice bench stands in truth, and what comes after it. */
export function Verdict({
  now,
  meter,
  truth,
}: {
  readonly now: WalkNow;
  readonly meter: WalkMeter;
  /** Null: nobody knows. */
  readonly truth: WalkTruth | null;
}): JSX.Element | null {
  const { verdict, ask } = now;
  if (verdict === null) return null;
  return (
    <section className="verdict" aria-label={walkTexts.verdict}>
      <h2>{walkTexts.verdict}</h2>
      {verdictText(verdict, meter).map((line) => (
        <p key={line}>{line}</p>
      ))}
      {verdict.remarks.map((remark) => (
        <p key={remark.id}>{remarkText(remark)}</p>
      ))}
      {truth !== null && (
        <>
          <h3>{walkTexts.truth}</h3>
          {truthTexts(truth).map((line) => (
            <p key={line}>{line}</p>
          ))}
          <p className="quiet small">{walkTexts.truthText}</p>
        </>
      )}
      {ask !== null && <h2>{walkTexts.next}</h2>}
    </section>
  );
}
