import {
  estimateText,
  higherOf,
  isSameScrew,
  readLaunch,
  remainingText,
  remarkText,
  screwWords,
  sessionOf,
  stepSentence,
  turnContext,
  turnedOf,
  walkNow,
  walkPlan,
  withinRange,
} from '@coreward/bench';
import type { KeptWalk } from '@coreward/contract';
import { type JSX, useMemo } from 'react';
import { Unreadable } from '../cautions/cautioned-launch.tsx';
import { PageLink } from '../frame/navigation.tsx';
import type { InstrumentsHeld } from '../instrument/use-instruments.ts';
import { useReadings } from '../instrument/use-readings.ts';
import { useVersion } from '../keeping/use-version.ts';
import { walkTexts } from '../texts/walk.ts';
import { AnswerPad } from './answer-pad.tsx';
import { LeavePad } from './leave-pad.tsx';
import { BestReading, InstrumentTrouble, LastReading, LiveReading } from './live-reading.tsx';
import { PracticePanel } from './practice-panel.tsx';
import { chosenOf, ReadsChange } from './reads-change.tsx';
import { useGoingOn } from './use-going-on.ts';
import { usePause } from './use-pause.ts';
import { useTone } from './use-tone.ts';
import { turnReach, useTurn } from './use-turn.ts';
import type { WalkHeld } from './use-walk.ts';
import { WalkBeside } from './walk-beside.tsx';
import { WalkControls } from './walk-controls.tsx';
import { Verdict } from './walk-verdict.tsx';

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
  const readings = useReadings(reads.instrument, turnReach);
  const { instrument } = readings;
  const noise = instrument?.noise ?? null;
  const key = `${walk.id} ${walk.acts.length}`;
  const turned = turnedOf(held.practice?.turned ?? null);
  const context = now === null ? null : turnContext(now, session, noise, turned);
  const since = Date.parse(walk.times.at(-1) ?? walk.begun);
  // single readings that are typed never come to rest: the step asks for one instead of listening
  const isTyped = instrument?.kind === 'typed';
  const turn = useTurn(key, since, isTyped ? null : context, readings);
  useGoingOn(key, reads.goesOn && !held.busy, turn, held);
  const isReady = usePause(key);
  const newest = readings.readings.findLast(({ value }) => value !== null) ?? null;
  const shown =
    reads.instrument === null ? (now?.last ?? null) : (turn?.shown ?? newest?.value ?? now?.last ?? null);
  const best = higherOf(now?.best ?? null, turn?.held ?? null);
  const tone = useTone(shown, best, context?.floor ?? null);
  if (planned?.ok === false) return <Unreadable why={planned.why} />;
  if (now === null) return <p className="quiet">{walkTexts.waiting}</p>;
  const { ask } = now;
  const sentence = ask === null ? null : stepSentence(ask.step, meter);
  const remaining = now.verdict === null ? remainingText(ask?.remaining ?? null) : null;
  const asked = ask !== null && 'screw' in ask.step ? ask.step.screw : null;
  // where the light is followed its sign says so
  const isWrong =
    ask !== null && turned !== null && !isSameScrew(turned, asked) && turn?.sign !== 'wrong-screw';
  const typed = isTyped
    ? { heard: newest !== null && newest.t > since ? newest.value : null, post: readings.post }
    : null;
  const isPractice = walk.seed !== null;
  return (
    <div className={isPractice ? 'walk is-practice' : 'walk'}>
      <div className="walk-turn">
        <div className="walk-asked">
          {isPractice && <p className="mark">{walkTexts.practice}</p>}
          <Verdict now={now} meter={meter} truth={held.practice?.truth ?? null} />
          {sentence === null ? (
            <p className="instruction">{walkTexts.finished}</p>
          ) : (
            <div aria-live="polite">
              <p className="instruction">{sentence.doThis}</p>
              {sentence.expect !== null && <p className="quiet">{sentence.expect}</p>}
            </div>
          )}
        </div>
        <div className="walk-top">
          {turn !== null && ask !== null ? (
            <LiveReading turn={turn} step={ask.step} meter={meter} />
          ) : (
            meter !== 'eye' && <LastReading shown={shown} isOver={ask === null} meter={meter} />
          )}
          {isWrong && (
            <p role="alert" className="refusal">
              {walkTexts.wrongScrew(screwWords(turned), asked === null ? null : screwWords(asked))}
            </p>
          )}
          {ask !== null && (
            <AnswerPad
              key={walk.acts.length}
              now={now}
              step={ask.step}
              meter={meter}
              turn={turn}
              typed={typed}
              busy={held.busy}
              isReady={isReady}
              onAnswer={(answer) => held.act({ do: 'answer', answer })}
            />
          )}
        </div>
        {isPractice && (
          <PracticePanel
            asked={asked}
            turned={ask === null ? null : turned}
            isBlocked={held.practice?.isBlocked === true}
            onTurn={held.turn}
            onBlock={held.block}
          />
        )}
      </div>
      <div className="walk-rest">
        {instrument !== null && (!isTyped || instrument.state === 'off') && (
          <InstrumentTrouble instrument={instrument} instruments={instruments} />
        )}
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
        {meter !== 'eye' && <BestReading turn={turn} best={now.best} meter={meter} />}
        <p className="estimate">
          {estimateText(now.estimate, meter)} {remaining}
        </p>
        {ask?.remarks.map((remark) => (
          <p key={remark.id} role="status">
            {remarkText(remark)}
          </p>
        ))}
        {held.said !== null && <p role="alert">{held.said}</p>}
        {ask !== null && (
          <LeavePad
            busy={held.busy}
            isReady={isReady}
            onAnswer={(answer) => held.act({ do: 'answer', answer })}
          />
        )}
        <WalkControls
          held={held}
          reads={reads}
          tone={tone}
          canUndo={now.moves.length > 0}
          canHand={isPractice && ask !== null}
          canGoOn={reads.instrument !== null && !isTyped}
        />
        {turn !== null && ask?.step.kind === 'sweep' && (
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
      <WalkBeside walk={walk} session={session} now={now} readings={readings} />
    </div>
  );
}
