import {
  type HazardQuestion,
  type KeptAnswer,
  type Launch,
  placesRefused,
  Refusal,
  readAnswers,
} from '@coreward/bench';
import { type FormEvent, type JSX, useId, useState } from 'react';
import { timeText } from '../frame/time-text.ts';
import { cautionTexts } from '../texts/cautions.ts';
import type { CautionBook } from './use-caution-book.ts';

interface QuestionViewProps {
  readonly launch: Launch;
  readonly question: HazardQuestion;
  readonly kept: KeptAnswer | undefined;
  readonly enter: CautionBook['enter'];
}

/** One question about what the launch cannot tell, with the ways to answer it and to take the answer back. */
export function QuestionView({ launch, question, kept, enter }: QuestionViewProps): JSX.Element {
  const { id, asks, untilThen, examples } = question;
  const [said, setSaid] = useState<string | null>(null);
  const [written, setWritten] = useState('');
  const field = useId();
  const values = examples.filter((one) => /\d/u.test(one));
  const words = examples.filter((one) => !values.includes(one));

  async function answer(text: string): Promise<void> {
    const refused = refusalOf(launch, id, text);
    setSaid(refused);
    if (refused !== null) return;
    const isKept = await enter('answer', { question: id, answer: text.trim() });
    setSaid(isKept ? null : cautionTexts.notKept);
    if (isKept) setWritten((now) => (now === text ? '' : now));
  }
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    if (written.trim() !== '') void answer(written);
  };
  return (
    <li className="question">
      <p id={`${field}-asks`}>{asks}</p>
      {kept === undefined ? (
        <p className="quiet">{cautionTexts.untilThen(untilThen)}</p>
      ) : (
        <p>
          <span className="answered">{cautionTexts.answered(kept.answer, timeText(kept.time))}</span>{' '}
          <button
            type="button"
            className="quiet-button"
            aria-label={cautionTexts.withdrawLabel(`${asks} ${kept.answer}`)}
            onClick={() => {
              void enter('withdrawn', { entry: kept.entry }).then((done) =>
                setSaid(done ? null : cautionTexts.notKept),
              );
            }}
          >
            {cautionTexts.withdraw}
          </button>
        </p>
      )}
      <form className="choices no-print" onSubmit={submit} aria-labelledby={`${field}-asks`}>
        {words.map((word) => (
          <button
            key={word}
            type="button"
            aria-pressed={kept?.answer === word}
            onClick={() => void answer(word)}
          >
            {word}
          </button>
        ))}
        {values.length > 0 && (
          <>
            <input
              type="text"
              autoComplete="off"
              aria-label={cautionTexts.answerLabel(asks)}
              aria-invalid={said !== null ? true : undefined}
              placeholder={cautionTexts.like(values.join(', '))}
              value={written}
              onChange={({ target }) => setWritten(target.value)}
            />
            <button type="submit">{cautionTexts.give}</button>
          </>
        )}
      </form>
      {said !== null && <p role="alert">{said}</p>}
    </li>
  );
}

/** Why an answer cannot be taken, with its mend; `null` if it can. */
function refusalOf(launch: Launch, id: string, text: string): string | null {
  try {
    readAnswers(launch, { [id]: text });
    return null;
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return placesRefused(error)
      .map(({ what, mend }) => `${what}. ${mend}`)
      .join(' ');
  }
}
