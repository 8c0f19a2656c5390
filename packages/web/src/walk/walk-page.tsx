import {
  answersThatCount,
  beforeWalkTexts,
  estimateText,
  everyStep,
  moveText,
  readingOf,
  readingText,
  readLaunch,
  remainingText,
  remarkText,
  stepSentence,
  verdictText,
  type WalkMeter,
  walkNow,
  walkPlan,
  withinRange,
} from '@coreward/bench';
import type { KeptWalk } from '@coreward/contract';
import { type JSX, useEffect, useMemo, useState } from 'react';
import { type Cautioned, CautionedLaunch, Unreadable } from '../cautions/cautioned-launch.tsx';
import { StepView } from '../cautions/steps-page.tsx';
import { PageLink } from '../frame/navigation.tsx';
import { useKeeping } from '../keeping/use-keeping.ts';
import { walkTexts } from '../texts/walk.ts';
import { AnswerPad, useHighest } from './answer-pad.tsx';
import { PracticePanel } from './practice-panel.tsx';
import { useTone } from './use-tone.ts';
import { useWalk, type WalkHeld } from './use-walk.ts';
import { Ridge, Trace } from './walk-drawings.tsx';
import './walk.css';

/** The fine alignment, step by step: for a phone beside the mount, and a laptop in step with it. */
export function WalkPage({ id }: { readonly id: string }): JSX.Element {
  return (
    <CautionedLaunch id={id} title={walkTexts.title}>
      {(cautioned) => <Walk id={id} cautioned={cautioned} />}
    </CautionedLaunch>
  );
}

function Walk({ id, cautioned }: { readonly id: string; readonly cautioned: Cautioned }): JSX.Element {
  const held = useWalk(id);
  const [another, setAnother] = useState<string | null>(null);
  if (held.stands === null) return <p className="quiet">{walkTexts.waiting}</p>;
  if (held.stands === 'failed') return <p role="alert">{walkTexts.failed}</p>;
  const { walk, meter } = held.stands;
  if (walk === null || another === walk.id) return <Begin cautioned={cautioned} held={held} />;
  return <Running walk={walk} live={meter} held={held} onAnother={() => setAnother(walk.id)} />;
}

/** The launch as it stood when the walk began, whatever has become of it. */
function useVersion(launch: string, version: number): string | null {
  const keeping = useKeeping();
  const [text, setText] = useState<string | null>(null);
  useEffect(() => {
    let left = false;
    keeping.versionOf(launch, version).then(
      (kept) => {
        if (!left) setText(kept.text);
      },
      () => {},
    );
    return () => {
      left = true;
    };
  }, [keeping, launch, version]);
  return text;
}

function Running({
  walk,
  live,
  held,
  onAnother,
}: {
  readonly walk: KeptWalk;
  readonly live: number | null;
  readonly held: WalkHeld;
  readonly onAnother: () => void;
}): JSX.Element {
  const text = useVersion(walk.launch, walk.version);
  const planned = useMemo(
    () => (text === null ? null : withinRange(() => walkPlan(readLaunch(text, 'launch')))),
    [text],
  );
  const now = useMemo(
    () =>
      planned?.ok === true ? walkNow(planned.value, { ...walk, answers: answersThatCount(walk.acts) }) : null,
    [planned, walk],
  );
  const highest = useHighest(`${walk.id} ${walk.acts.length}`, live);
  const shown = live ?? now?.last ?? null;
  const tone = useTone(shown, now?.best ?? null);
  if (planned?.ok === false) return <Unreadable why={planned.why} />;
  if (now === null) return <p className="quiet">{walkTexts.waiting}</p>;
  const { meter } = walk;
  const sentence = now.ask === null ? null : stepSentence(now.ask.step, meter);
  const remaining = now.verdict === null ? remainingText(now.ask?.remaining ?? null) : null;
  return (
    <div className="walk">
      <div className="walk-hand">
        {walk.seed !== null && <p className="mark">{walkTexts.practice}</p>}
        {now.verdict !== null && (
          <section className="verdict" aria-label={walkTexts.verdict}>
            <h2>{walkTexts.verdict}</h2>
            {verdictText(now.verdict, meter).map((line) => (
              <p key={line}>{line}</p>
            ))}
            {now.verdict.remarks.map((remark) => (
              <p key={remark.id}>{remarkText(remark)}</p>
            ))}
            {now.ask !== null && <h2>{walkTexts.next}</h2>}
          </section>
        )}
        {sentence === null ? (
          <p className="instruction">{walkTexts.finished}</p>
        ) : (
          <div aria-live="polite">
            <p className="instruction">{sentence.doThis}</p>
            {sentence.expect !== null && <p className="quiet">{sentence.expect}</p>}
          </div>
        )}
        {meter !== 'eye' && (
          <>
            <p className="reading-large">
              <span className="quiet">{walkTexts.now}</span>{' '}
              <output>{shown === null ? '–' : readingText(shown, meter)}</output>
            </p>
            <p className="reading-best">
              {walkTexts.best} {now.best === null ? walkTexts.nothing : readingText(now.best, meter)}
              {live !== null && highest !== null && `, ${walkTexts.highest} ${readingText(highest, meter)}`}
            </p>
          </>
        )}
        <p className="estimate">
          {estimateText(now.estimate, meter)} {remaining}
        </p>
        {now.ask?.remarks.map((remark) => (
          <p key={remark.id} role="status">
            {remarkText(remark)}
          </p>
        ))}
        {held.said !== null && <p role="alert">{held.said}</p>}
        {now.ask !== null && (
          <AnswerPad
            key={walk.acts.length}
            now={now}
            step={now.ask.step}
            meter={meter}
            live={live === null || highest === null ? null : { reading: live, highest }}
            busy={held.busy}
            onAnswer={(answer) => held.act({ do: 'answer', answer })}
          />
        )}
        <div className="pad">
          {walk.seed !== null && now.ask !== null && (
            <button type="button" className="big" disabled={held.busy} onClick={held.hand}>
              {walkTexts.hand}
            </button>
          )}
          <button
            type="button"
            className="big"
            disabled={held.busy || now.moves.length === 0}
            onClick={() => held.act({ do: 'undo' })}
          >
            {walkTexts.undo}
          </button>
          {meter !== 'eye' && (
            <button type="button" className="big" aria-pressed={tone.isOn} onClick={tone.press}>
              {tone.isOn ? walkTexts.mute : walkTexts.sound}
            </button>
          )}
        </div>
        {meter !== 'eye' && <p className="quiet">{walkTexts.soundText}</p>}
        <p className="facts">
          <PageLink to={{ page: 'steps', id: walk.launch }}>{walkTexts.toCautions}</PageLink>
          <button type="button" className="quiet-button" onClick={onAnother}>
            {walkTexts.another}
          </button>
        </p>
      </div>
      <div className="walk-beside">
        {walk.seed !== null && <PracticePanel onTurn={held.turn} />}
        {meter !== 'eye' && now.moves.length > 0 && <Trace moves={now.moves} />}
        {meter !== 'eye' && <Ridge estimate={now.estimate} />}
        {now.moves.length > 0 && (
          <section>
            <h2>{walkTexts.moves}</h2>
            <ol className="moves" reversed>
              {now.moves
                .map((move, at) => ({ move, at }))
                .toReversed()
                .map(({ move, at }) => (
                  <li key={at}>{moveText(move.step, move.answer, meter)}</li>
                ))}
            </ol>
          </section>
        )}
      </div>
    </div>
  );
}

/** How the walk is led, what tells the light, and what is read before a real bench is walked. */
function Begin({ cautioned, held }: { readonly cautioned: Cautioned; readonly held: WalkHeld }): JSX.Element {
  const { launch, answers, book } = cautioned;
  const [procedure, setProcedure] = useState<KeptWalk['procedure']>('ridge');
  const [meter, setMeter] = useState<Extract<WalkMeter, 'typed' | 'eye'>>('typed');
  const planned = useMemo(() => withinRange(() => walkPlan(launch)), [launch]);
  const told = useMemo(() => withinRange(() => everyStep(launch, { answers })), [launch, answers]);
  if (!planned.ok) return <Unreadable why={planned.why} />;
  if (!told.ok) return <Unreadable why={told.why} />;
  const steps = told.value.filter(({ step }) => step === 'find-light' || step === 'climb');
  const isRead = steps.every((step) => readingOf(book.read.get(step.step), step) === 'read');
  const words = walkTexts.begin;
  // by eye nothing is measured that a model could use
  const led = meter === 'eye' ? 'taught' : procedure;
  return (
    <div className="walk-begin">
      <h2>{words.title}</h2>
      {beforeWalkTexts(planned.value).map((line) => (
        <p key={line}>{line}</p>
      ))}
      <fieldset>
        <legend>{words.meter}</legend>
        {(['typed', 'eye'] as const).map((one) => (
          <label key={one}>
            <input type="radio" name="meter" checked={meter === one} onChange={() => setMeter(one)} />{' '}
            {words[one]}
          </label>
        ))}
      </fieldset>
      <fieldset>
        <legend>{words.procedure}</legend>
        {(['ridge', 'taught'] as const).map((one) => (
          <label key={one}>
            <input
              type="radio"
              name="procedure"
              disabled={meter === 'eye' && one === 'ridge'}
              checked={led === one}
              onChange={() => setProcedure(one)}
            />{' '}
            {words[one]}
          </label>
        ))}
      </fieldset>
      {held.said !== null && <p role="alert">{held.said}</p>}
      <section>
        <p className="quiet">{words.practiceText}</p>
        <button
          type="button"
          className="big act"
          disabled={held.busy}
          onClick={() => held.begin({ procedure: led, meter, practice: { seed: null } })}
        >
          {words.practice}
        </button>
      </section>
      <section>
        <h2>{words.cautions}</h2>
        {steps.map((step) => (
          <StepView key={step.step} step={step} read={book.read.get(step.step)} enter={book.enter} />
        ))}
        {!isRead && <p id="read-first">{words.readFirst}</p>}
        <button
          type="button"
          className="big act"
          disabled={held.busy || !isRead}
          aria-describedby={isRead ? undefined : 'read-first'}
          onClick={() => held.begin({ procedure: led, meter, practice: null })}
        >
          {words.real}
        </button>
      </section>
    </div>
  );
}
