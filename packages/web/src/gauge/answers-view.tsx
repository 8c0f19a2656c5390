import { type AnswerWords, type Measured, unbroken } from '@coreward/bench';
import type { JSX } from 'react';
import { Pieces } from '../field/mend.tsx';
import { gaugeTexts } from '../texts/gauge.ts';
import { CurveView } from './curve-view.tsx';

/** What a gauge found: curves, answers with their doubt, and what was noticed. */
export function AnswersView({
  measured,
}: {
  readonly measured: Extract<Measured, { kind: 'measured' }>;
}): JSX.Element {
  const { answers, remarks, curves, unused } = measured;
  return (
    <>
      {curves.map((curve, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: scans at several places bear one title
        <CurveView key={i} curve={curve} />
      ))}
      <h2>{gaugeTexts.found}</h2>
      <ul className="answers">
        {answers.map((answer) => (
          <Answer key={answer.name} answer={answer} />
        ))}
      </ul>
      {remarks.length + unused.length > 0 && (
        <ul className="remarks" aria-label={gaugeTexts.remarks}>
          {remarks.map((remark) => (
            <li key={remark}>
              <Pieces text={remark} />
            </li>
          ))}
          {unused.length > 0 && <li>{gaugeTexts.unused(unused.join(', '))}</li>}
        </ul>
      )}
    </>
  );
}

function Answer({
  answer: { name, verdict, value, interval, from, advice },
}: {
  readonly answer: AnswerWords;
}): JSX.Element {
  return (
    <li data-verdict={verdict}>
      <h3>{name}</h3>
      <p className="answer-value">
        {value !== null && <strong>{value}</strong>}{' '}
        <span className="verdict">{gaugeTexts.verdicts[verdict]}</span>
      </p>
      {interval !== null && <p>{unbroken(gaugeTexts.interval(interval))}</p>}
      {advice !== null && (
        <p className="advice">
          <Pieces text={advice} />
        </p>
      )}
      {value !== null && (
        <p className="quiet">
          {from.length === 0 ? gaugeTexts.exact : unbroken(gaugeTexts.from(from.join('; ')))}
        </p>
      )}
    </li>
  );
}

/** What is refused, each with its place and its mend. */
export function RefusedView({
  measured,
}: {
  readonly measured: Extract<Measured, { kind: 'refused' }>;
}): JSX.Element {
  return (
    <div className="refusal">
      <h2>{gaugeTexts.refused}</h2>
      {measured.refused.map(({ where, what, mend }) => (
        <p key={where + what}>
          <Pieces text={`${where}: ${what}.`} /> <Pieces text={mend} />
        </p>
      ))}
    </div>
  );
}
