import { moveText, type ReadSession, type WalkNow } from '@coreward/bench';
import type { KeptWalk } from '@coreward/contract';
import { type JSX, useMemo } from 'react';
import { FaultBoundary } from '../frame/fault-boundary.tsx';
import { TraceView } from '../instrument/trace-view.tsx';
import type { ReadingsHeld } from '../instrument/use-readings.ts';
import { walkTexts } from '../texts/walk.ts';
import { Ridge, Trace } from './walk-drawings.tsx';

/** What is looked at beside the turning: what was read, where the bench is believed to stand, and what was done. */
export function WalkBeside({
  walk,
  session,
  now,
  readings,
}: {
  readonly walk: KeptWalk;
  readonly session: ReadSession;
  readonly now: WalkNow;
  readonly readings: ReadingsHeld;
}): JSX.Element {
  const { meter } = session;
  const { instrument } = readings;
  const marks = useMemo(
    () =>
      session.answeredBy.map((act, index) => ({
        t: Date.parse(walk.times[act] ?? walk.begun),
        text: `${index + 1}`,
      })),
    [session, walk],
  );
  return (
    <div className="walk-beside">
      <FaultBoundary line={walkTexts.brokenDrawing}>
        {instrument !== null && <TraceView instrument={instrument} held={readings} marks={marks} />}
        {instrument !== null && marks.length > 0 && <p className="quiet">{walkTexts.live.marks}</p>}
      </FaultBoundary>
      <FaultBoundary line={walkTexts.brokenDrawing}>
        {meter !== 'eye' && now.best !== null && <Trace moves={now.moves} />}
        {meter !== 'eye' && <Ridge estimate={now.estimate} />}
      </FaultBoundary>
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
  );
}
