import {
  estimateText,
  higherOf,
  moveText,
  readingText,
  readLaunch,
  remainingText,
  remarkText,
  sessionOf,
  stepSentence,
  turnContext,
  verdictText,
  walkNow,
  walkPlan,
  withinRange,
} from '@coreward/bench';
import type { KeptWalk } from '@coreward/contract';
import { type JSX, useEffect, useMemo, useState } from 'react';
import { Unreadable } from '../cautions/cautioned-launch.tsx';
import { PageLink } from '../frame/navigation.tsx';
import { TraceView } from '../instrument/trace-view.tsx';
import type { InstrumentsHeld } from '../instrument/use-instruments.ts';
import { useReadings } from '../instrument/use-readings.ts';
import { useKeeping } from '../keeping/use-keeping.ts';
import { walkTexts } from '../texts/walk.ts';
import { AnswerPad } from './answer-pad.tsx';
import { InstrumentTrouble, LiveReading } from './live-reading.tsx';
import { PracticePanel } from './practice-panel.tsx';
import { chosenOf, ReadsChange } from './reads-change.tsx';
import { useGoingOn } from './use-going-on.ts';
import { useTone } from './use-tone.ts';
import { turnReach, useTurn } from './use-turn.ts';
import type { WalkHeld } from './use-walk.ts';
import { Ridge, Trace } from './walk-drawings.tsx';

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

/** A walk that goes on: what is asked, what the light says to it, and what was done. */
export function RunningWalk({
  walk,
  held,
  instruments,
  onAnother,
}: {
  readonly walk: KeptWalk;
  readonly held: WalkHeld;
  readonly instruments: InstrumentsHeld;
  readonly onAnother: () => void;
}): JSX.Element {
  const text = useVersion(walk.launch, walk.version);
  const planned = useMemo(
    () => (text === null ? null : withinRange(() => walkPlan(readLaunch(text, 'launch')))),
    [text],
  );
  const session = useMemo(() => sessionOf(walk, walk.acts), [walk]);
  const now = useMemo(
    () => (planned?.ok === true ? walkNow(planned.value, session) : null),
    [planned, session],
  );
  const { reads, meter } = session;
  const marks = useMemo(
    () =>
      session.answeredBy.map((act, index) => ({
        t: Date.parse(walk.times[act] ?? walk.begun),
        text: `${index + 1}`,
      })),
    [session, walk],
  );
  const readings = useReadings(reads.instrument, turnReach);
  const { instrument } = readings;
  const noise = instrument?.noise ?? null;
  const context = now === null ? null : turnContext(now, session, noise);
  const key = `${walk.id} ${walk.acts.length}`;
  const turn = useTurn(key, Date.parse(walk.times.at(-1) ?? walk.begun), context, readings);
  useGoingOn(key, reads.goesOn && !held.busy, turn, held.act);
  const shown = reads.instrument === null ? (now?.last ?? null) : (turn?.shown ?? null);
  const best = higherOf(now?.best ?? null, turn?.held ?? null);
  const tone = useTone(shown, best, context?.floor ?? null);
  if (planned?.ok === false) return <Unreadable why={planned.why} />;
  if (now === null) return <p className="quiet">{walkTexts.waiting}</p>;
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
        {turn !== null && now.ask !== null ? (
          <LiveReading turn={turn} step={now.ask.step} meter={meter} best={now.best} />
        ) : (
          meter !== 'eye' && (
            <>
              <p className="reading-large">
                <span className="quiet">{walkTexts.now}</span>{' '}
                <output>{shown === null ? '–' : readingText(shown, meter)}</output>
              </p>
              <p className="reading-best">
                {walkTexts.best} {now.best === null ? walkTexts.nothing : readingText(now.best, meter)}
              </p>
            </>
          )
        )}
        {instrument !== null && <InstrumentTrouble instrument={instrument} instruments={instruments} />}
        {reads.instrument !== null && readings.state === 'failed' && (
          <p role="alert">{walkTexts.live.away}</p>
        )}
        {turn?.sign === 'too-much' && (
          <div className="pad">
            <button
              type="button"
              className="big act"
              disabled={held.busy}
              onClick={() => held.reads({ reads: chosenOf(reads), goesOn: reads.goesOn, anew: true })}
            >
              {walkTexts.reads.anew}
            </button>
          </div>
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
            turn={turn}
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
          {reads.instrument !== null && (
            <button
              type="button"
              className="big"
              aria-pressed={reads.goesOn}
              title={walkTexts.live.goesOnText}
              disabled={held.busy}
              onClick={() => held.reads({ reads: chosenOf(reads), goesOn: !reads.goesOn, anew: false })}
            >
              {walkTexts.live.goesOn}
            </button>
          )}
        </div>
        {meter !== 'eye' && <p className="quiet">{walkTexts.soundText}</p>}
        {turn !== null && now.ask?.step.kind === 'sweep' && (
          <p>
            <button
              type="button"
              className="quiet-button"
              disabled={held.busy}
              onClick={() => held.reads({ reads: chosenOf(reads), goesOn: reads.goesOn, anew: false })}
            >
              {walkTexts.live.listenAnew}
            </button>
          </p>
        )}
        <ReadsChange reads={reads} instruments={instruments.instruments} held={held} />
        <p className="facts">
          <PageLink to={{ page: 'steps', id: walk.launch }}>{walkTexts.toCautions}</PageLink>
          <button type="button" className="quiet-button" onClick={onAnother}>
            {walkTexts.another}
          </button>
        </p>
      </div>
      <div className="walk-beside">
        {walk.seed !== null && <PracticePanel onTurn={held.turn} onBlock={held.block} />}
        {instrument !== null && <TraceView instrument={instrument} held={readings} marks={marks} />}
        {instrument !== null && marks.length > 0 && <p className="quiet">{walkTexts.live.marks}</p>}
        {meter !== 'eye' && now.best !== null && <Trace moves={now.moves} />}
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
