import {
  answerEntry,
  type HiddenBench,
  isSamePlan,
  type KeptSteer,
  type Launch,
  paceWords,
  practisedSteer,
  readLaunch,
  replaySteer,
  type SteerAnswer,
  type SteerNow,
  type SteerPlan,
  type StepWords,
  servingWords,
  steerAnswerWords,
  steerLayout,
  steerMeterWords,
  steerPlan,
  steerRemarkWords,
  steerStepWords,
  steerVerdictWords,
  unsteeredBench,
  withinRange,
} from '@coreward/bench';
import { type JSX, useMemo, useState } from 'react';
import { PageLink } from '../frame/navigation.tsx';
import { useVersion } from '../keeping/use-version.ts';
import { steerTexts } from '../texts/steer.ts';
import { AnswerTo } from './answer-to.tsx';
import { CardsView, lastSeen } from './cards-view.tsx';
import { noCardsKept, unread } from './offsets-by-camera.tsx';
import { RasterView } from './raster-view.tsx';
import type { SteerBook } from './use-steer-book.ts';

interface SessionProps {
  /** Of the launch. */
  readonly id: string;
  /** As it is now. */
  readonly launch: Launch;
  readonly kept: KeptSteer;
  /** The version of the launch that the steer was begun with, where it is not the newest; null: it is, or nobody knows. */
  readonly before: number | null;
  readonly steers: SteerBook;
  readonly again: () => void;
}

/** A steer that was begun: where it stands, what to do now, and what was done. It keeps to the launch it was begun with. */
export function Session(props: SessionProps): JSX.Element {
  const { id, launch, kept, before, again } = props;
  const text = useVersion(id, before);
  const isWaiting = before !== null && text === null;
  const stands = useMemo(
    () =>
      withinRange(() => {
        const steered = text === null ? launch : readLaunch(text, 'launch');
        const { cards, meter, practice, answers } = kept;
        const planOf = (one: Launch) => steerPlan(one, cards, steerLayout(one), meter);
        const plan = planOf(steered);
        const newest = text === null ? null : withinRange(() => planOf(launch));
        return {
          plan,
          hidden: practice === null ? null : unsteeredBench(steered, practice),
          now: isWaiting ? null : replaySteer(plan, answers),
          isChanged: newest !== null && !(newest.ok && isSamePlan(plan, newest.value)),
        };
      }),
    [launch, text, kept, isWaiting],
  );
  const beginAnew = (
    <button type="button" onClick={again}>
      {steerTexts.again}
    </button>
  );
  if (!stands.ok) {
    return (
      <section>
        <p role="alert">{steerTexts.changed}</p>
        <p>{stands.why}</p>
        {beginAnew}
      </section>
    );
  }
  const { now, isChanged, ...value } = stands.value;
  if (now === null) return <p className="quiet">{steerTexts.waiting}</p>;
  return (
    <>
      {isChanged && (
        <section className="steer-remark" role="status">
          <p>{steerTexts.goesOnAsBegun}</p>
          {beginAnew}
        </section>
      )}
      <Standing {...props} {...value} now={now} />
    </>
  );
}

function Standing({
  id,
  kept,
  hidden,
  steers,
  again,
  plan,
  now,
}: SessionProps & {
  readonly plan: SteerPlan;
  readonly now: SteerNow;
  /** The practice bench; null on a real one. */
  readonly hidden: HiddenBench | null;
}): JSX.Element {
  const [failed, setFailed] = useState(false);
  const [busy, setBusy] = useState(false);
  // where a camera's marks lie: it may stay where it is from one reading to the next
  const [cards, setCards] = useState(noCardsKept);
  const { practice, session, answers, lastEntry } = kept;
  // which step of a practice bench was turned already, to be looked at before it is answered
  const [turnedAt, setTurnedAt] = useState<number | null>(null);
  const isTurned = turnedAt === answers.length;
  const practised = useMemo(
    () => (hidden === null || practice === null ? null : practisedSteer(hidden, practice, plan, now)),
    [hidden, practice, plan, now],
  );
  const keep = async (done: Promise<boolean>): Promise<boolean> => {
    setBusy(true);
    const isKept = await done;
    setFailed(!isKept);
    setBusy(false);
    return isKept;
  };
  const { ask, verdict, moves } = now;
  const answer = (given: SteerAnswer): void => {
    if (ask === null || busy) return;
    const entry = answerEntry(session, answers.length, given, steerAnswerWords(ask.step, given));
    void keep(steers.enter(entry)).then((isKept) => {
      // what was not kept need not be read again
      if (isKept && given.outcome === 'read') setCards(unread);
    });
  };
  const hand = practised?.hand ?? null;
  return (
    <section className="steer" aria-labelledby="steer-now">
      <h2 id="steer-now">{steerTexts.step}</h2>
      {practice !== null && <p className="mark">{steerTexts.practising(practice)}</p>}
      {ask !== null && ask.remarks[0] !== undefined && (
        <div className="steer-remark" role="alert">
          <Words words={steerRemarkWords(ask.remarks[0])} />
        </div>
      )}
      <div aria-live="polite">
        {ask !== null && <Words words={steerStepWords(ask.step)} />}
        {verdict !== null && <Words words={steerVerdictWords(verdict)} />}
      </div>
      {(verdict === 'light' || verdict === 'found') && (
        <p>
          <PageLink to={{ page: 'walk', id }}>{steerTexts.toWalk}</PageLink>
        </p>
      )}
      {ask?.step.kind === 'raster' && (
        <>
          <RasterView plan={plan} step={ask.step} />
          <p className="quiet">
            {paceWords(plan, ask.step.boxes)} {steerMeterWords(plan.meter)}
          </p>
        </>
      )}
      {ask !== null && (
        <AnswerTo
          key={answers.length}
          step={ask.step}
          {...{ plan, moves, cards, answer }}
          practised={practised !== null}
          turnIt={practised === null || isTurned ? null : () => setTurnedAt(answers.length)}
          onCards={setCards}
        />
      )}
      <div className="choices">
        {hand !== null && (
          <button type="button" onClick={() => answer(hand)}>
            {steerTexts.hand}
          </button>
        )}
        {lastEntry !== null && (
          <button
            type="button"
            className="quiet-button"
            onClick={() => void keep(steers.withdraw(lastEntry))}
          >
            {steerTexts.undo}
          </button>
        )}
        <button type="button" className="quiet-button" onClick={again}>
          {steerTexts.again}
        </button>
      </div>
      {failed && <p role="alert">{steerTexts.notKept}</p>}
      <CardsView
        seen={practised === null ? lastSeen(now) : isTurned ? practised.turned : practised.seen}
        before={isTurned ? (practised?.seen ?? null) : null}
      />
      <details className="more">
        <summary>{steerTexts.serving}</summary>
        <p>{servingWords(plan)}</p>
      </details>
      {moves.length > 0 && (
        <details className="more">
          <summary>{steerTexts.soFar}</summary>
          <ol className="steer-moves">
            {moves.map(({ step, answer: given }, at) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: what was done has no name but its rank
              <li key={at}>{steerAnswerWords(step, given)}</li>
            ))}
          </ol>
        </details>
      )}
    </section>
  );
}

function Words({ words: { order, mind } }: { readonly words: StepWords }): JSX.Element {
  return (
    <>
      <p className="steer-order">{order}</p>
      <ul className="steer-mind">
        {mind.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}
