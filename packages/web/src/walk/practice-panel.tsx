import { type Screw, screwWords } from '@coreward/bench';
import { type JSX, type KeyboardEvent, type PointerEvent, useRef, type WheelEvent } from 'react';
import { walkTexts } from '../texts/walk.ts';

const screws: readonly Screw[] = [
  { mirror: 'M1', axis: 'horizontal' },
  { mirror: 'M1', axis: 'vertical' },
  { mirror: 'M2', axis: 'horizontal' },
  { mirror: 'M2', axis: 'vertical' },
];
const amounts = [-1 / 4, -1 / 16, -1 / 64, 1 / 64, 1 / 16, 1 / 4] as const;
const [fine, middle] = [1 / 64, 1 / 16] as const;
/** So far the pointer is dragged for a 64th of a turn, CSS pixels. */
const dragged = 6;

/** The screws of a practice bench, and a hand before its beam. Where they stand is hidden, as on a real one. */
export function PracticePanel({
  onTurn,
  onBlock,
}: {
  readonly onTurn: (screw: Screw, turns: number) => void;
  readonly onBlock: (blocked: boolean) => void;
}): JSX.Element {
  return (
    <section className="screws" aria-label={walkTexts.screws}>
      <h2>{walkTexts.screws}</h2>
      <p className="quiet">{walkTexts.screwText}</p>
      <div className="pad">
        <button type="button" className="big" onClick={() => onBlock(true)}>
          {walkTexts.block}
        </button>
        <button type="button" className="big" onClick={() => onBlock(false)}>
          {walkTexts.unblock}
        </button>
      </div>
      {screws.map((screw) => (
        <Knob key={screwWords(screw)} screw={screw} onTurn={(turns) => onTurn(screw, turns)} />
      ))}
    </section>
  );
}

function Knob({
  screw,
  onTurn,
}: {
  readonly screw: Screw;
  readonly onTurn: (turns: number) => void;
}): JSX.Element {
  const name = screwWords(screw);
  const from = useRef<number | null>(null);
  const onKeyDown = (event: KeyboardEvent): void => {
    const sense =
      event.key === 'ArrowRight' || event.key === 'ArrowUp'
        ? 1
        : event.key === 'ArrowLeft' || event.key === 'ArrowDown'
          ? -1
          : 0;
    if (sense === 0) return;
    event.preventDefault();
    onTurn(sense * (event.shiftKey ? middle : fine));
  };
  const onPointerMove = (event: PointerEvent): void => {
    if (from.current === null) return;
    const moved = event.clientX - from.current;
    if (moved < dragged && moved > -dragged) return;
    from.current = event.clientX;
    onTurn(moved > 0 ? fine : -fine);
  };
  const onWheel = (event: WheelEvent): void => {
    if (event.currentTarget === document.activeElement) onTurn(event.deltaY < 0 ? fine : -fine);
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot take the focus that arrow keys need
    <div
      className="knob"
      role="group"
      aria-label={name}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys turn it
      tabIndex={0}
      onKeyDown={onKeyDown}
      onWheel={onWheel}
      onPointerDown={(event) => {
        if (event.target !== event.currentTarget && event.target instanceof HTMLButtonElement) return;
        from.current = event.clientX;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={onPointerMove}
      onPointerUp={() => {
        from.current = null;
      }}
    >
      <span className="knob-name">{name}</span>
      {amounts.map((amount, index) => {
        const written = walkTexts.amounts[index] ?? '';
        return (
          <button
            key={amount}
            type="button"
            aria-label={walkTexts.turn(name, written)}
            onClick={() => onTurn(amount)}
          >
            {written}
          </button>
        );
      })}
    </div>
  );
}
