import type { WalkAnswer } from '@coreward/bench';
import { type JSX, useId } from 'react';
import { walkTexts } from '../texts/walk.ts';

/** The two ways past a step that cannot be done as asked, each with what follows from it. */
export function LeavePad({
  busy,
  isReady,
  onAnswer,
}: {
  readonly busy: boolean;
  /** Whether a press counts yet. */
  readonly isReady: boolean;
  readonly onAnswer: (answer: WalkAnswer) => void;
}): JSX.Element {
  const about = useId();
  const ways = [
    ['did-not-work', walkTexts.didNotWork, walkTexts.didNotWorkText],
    ['skipped', walkTexts.skip, walkTexts.skipText],
  ] as const;
  return (
    <div className="pad leave no-print">
      {ways.map(([outcome, word, follows]) => (
        <div key={outcome}>
          <button
            type="button"
            className="big"
            disabled={busy}
            aria-disabled={!isReady}
            aria-describedby={`${about}-${outcome}`}
            onClick={() => {
              if (isReady) onAnswer({ outcome });
            }}
          >
            {word}
          </button>
          <p id={`${about}-${outcome}`} className="quiet small">
            {follows}
          </p>
        </div>
      ))}
    </div>
  );
}
