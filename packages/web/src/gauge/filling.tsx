import { type JSX, useId, useMemo } from 'react';
import { useKept } from '../keeping/use-keeping.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import { type Target, withAnswer } from './targets.ts';

interface FillingProps {
  readonly target: Target;
  /** What was typed for what belongs to the place; null: nothing yet. */
  readonly beside: string | null;
  readonly onBeside: (text: string) => void;
  readonly busy: boolean;
  readonly onWrite: () => void;
}

/** What stands at a place before and after, and the press that writes it. */
export function Filling({ target, beside, onBeside, busy, onWrite }: FillingProps): JSX.Element {
  const state = useKept();
  const id = useId();
  const { place, entry } = target;
  const after = useMemo(() => withAnswer(target, beside, state), [target, beside, state]);
  const { before, origin, note } = place;
  const isThere = before === entry.text && origin === 'measured';
  return (
    <>
      <dl className="before-after">
        {!isThere && (
          <div>
            <dt>{gaugeTexts.before}</dt>
            <dd>{before === null ? gaugeTexts.nothing : gaugeTexts.told(before, origin, note)}</dd>
          </div>
        )}
        <div>
          <dt>{isThere ? gaugeTexts.there : gaugeTexts.after}</dt>
          <dd>{gaugeTexts.told(entry.text, 'measured', entry.quantity.note ?? null)}</dd>
        </div>
      </dl>
      {entry.condition !== null && <p className="advice">{gaugeTexts.onlyIf(entry.condition)}</p>}
      {place.beside !== null && (
        <div className="field">
          <label htmlFor={id}>{gaugeTexts.beside(place.beside.key)}</label>
          <input
            id={id}
            className="entry"
            type="text"
            autoComplete="off"
            value={beside ?? needsBeside(target) ?? place.beside.before ?? ''}
            onChange={({ target: { value } }) => onBeside(value)}
          />
        </div>
      )}
      {after.refused.length > 0 && (
        <div className="refusal" role="alert">
          <p>{gaugeTexts.wouldBeRefused}</p>
          {after.refused.map(({ place: at, what, mend }) => (
            <p key={at + what}>{`${at}: ${what}. ${mend}`.replaceAll('`', '')}</p>
          ))}
        </div>
      )}
      <p>
        <button type="button" className="act" disabled={busy || after.refused.length > 0} onClick={onWrite}>
          {gaugeTexts.write}
        </button>
      </p>
    </>
  );
}

/** What must stand beside the answer for it to hold, as long as nobody typed something else. */
const needsBeside = ({ place, entry }: Target): string | null =>
  place.beside !== null && entry.beside?.key === place.beside.key ? entry.beside.text : null;
