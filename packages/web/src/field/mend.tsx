import { capital, type RefusedPlace } from '@coreward/bench';
import type { JSX } from 'react';

/**
 * What is refused at a place, with the mend; what stands between backticks in it can be taken with one press.
 *
 * @param onTake left out where a piece of the mend makes no value of the field
 */
export function Refusals({
  id,
  refused,
  onTake,
}: {
  readonly id: string;
  readonly refused: readonly RefusedPlace[];
  readonly onTake?: ((text: string) => void) | undefined;
}): JSX.Element | null {
  if (refused.length === 0) return null;
  return (
    <div className="refusal" id={id} role="alert">
      {refused.map(({ what, mend }) => (
        <p key={what + mend}>
          <Pieces text={`${capital(what)}.`} /> <Pieces text={mend} onTake={onTake} />
        </p>
      ))}
    </div>
  );
}

/** A text with what stands between backticks set apart. */
export function Pieces({
  text,
  onTake,
}: {
  readonly text: string;
  readonly onTake?: ((text: string) => void) | undefined;
}): JSX.Element {
  return (
    <>
      {text.split('`').map((piece, index) => {
        const key = `${index} ${piece}`;
        if (index % 2 === 0) return <span key={key}>{piece}</span>;
        if (onTake === undefined) return <code key={key}>{piece}</code>;
        return (
          <button key={key} type="button" className="mend" onClick={() => onTake(piece)}>
            {piece}
          </button>
        );
      })}
    </>
  );
}
