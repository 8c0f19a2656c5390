import type { WalkReads } from '@coreward/bench';
import type { JSX } from 'react';
import { walkTexts } from '../texts/walk.ts';
import { chosenOf } from './reads-change.tsx';
import type { useTone } from './use-tone.ts';
import type { WalkHeld } from './use-walk.ts';

/** What can be done at any step: let the practised hand do it, take back, hear it, go on without a press. */
export function WalkControls({
  held,
  reads,
  tone,
  canUndo,
  canHand,
  canGoOn,
}: {
  readonly held: WalkHeld;
  readonly reads: WalkReads;
  readonly tone: ReturnType<typeof useTone>;
  readonly canUndo: boolean;
  readonly canHand: boolean;
  /** Whether readings come by themselves. */
  readonly canGoOn: boolean;
}): JSX.Element {
  const { live } = walkTexts;
  return (
    <>
      <div className="pad">
        {canHand && (
          <button type="button" className="big" disabled={held.busy} onClick={held.hand}>
            {walkTexts.hand}
          </button>
        )}
        <button
          type="button"
          className="big"
          disabled={held.busy || !canUndo}
          onClick={() => held.act({ do: 'undo' })}
        >
          {walkTexts.undo}
        </button>
        {reads.meter !== 'eye' && (
          <button type="button" className="big" aria-pressed={tone.isOn} onClick={tone.press}>
            {tone.isOn ? walkTexts.mute : walkTexts.sound}
          </button>
        )}
        {canGoOn && (
          <button
            type="button"
            className="big"
            aria-pressed={reads.goesOn}
            disabled={held.busy}
            onClick={() => held.reads({ reads: chosenOf(reads), goesOn: !reads.goesOn, anew: false })}
          >
            {live.goesOn}
            <span className="switch-state" aria-hidden="true">
              {reads.goesOn ? live.goesOnIsOn : live.goesOnIsOff}
            </span>
          </button>
        )}
      </div>
      {canGoOn && <p className="quiet small no-print">{live.goesOnText}</p>}
      {reads.meter !== 'eye' && <p className="quiet small no-print">{walkTexts.soundText}</p>}
    </>
  );
}
