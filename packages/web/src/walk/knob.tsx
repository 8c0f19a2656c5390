import { type Screw, screwWords } from '@coreward/bench';
import { type JSX, type KeyboardEvent, type PointerEvent, useEffect, useEffectEvent, useRef } from 'react';
import { walkTexts } from '../texts/walk.ts';

/** Turned back in the upper row, onwards in the lower. */
const amounts = [-1 / 4, -1 / 16, -1 / 64, -1 / 256, 1 / 4, 1 / 16, 1 / 64, 1 / 256] as const;
const [fine, middle] = [1 / 64, 1 / 16] as const;
/** So far the pointer is dragged for a 64th of a turn, CSS pixels. */
const dragged = 6;

/** One screw: its buttons, and a grip for a pointer, the wheel and arrow keys. */
export function Knob({
  screw,
  isAsked,
  isWrong,
  onTurn,
}: {
  readonly screw: Screw;
  readonly isAsked: boolean;
  /** It was turned although it is not the one that is asked. */
  readonly isWrong: boolean;
  readonly onTurn: (turns: number) => void;
}): JSX.Element {
  const name = screwWords(screw);
  const from = useRef<number | null>(null);
  const dial = useRef<HTMLDivElement>(null);
  const onWheel = useEffectEvent((event: WheelEvent): void => {
    if (dial.current === null || dial.current !== document.activeElement) return;
    // the wheel turns the screw, and then not the page
    event.preventDefault();
    onTurn(event.deltaY < 0 ? fine : -fine);
  });
  useEffect(() => {
    const held = dial.current;
    const listen = (event: WheelEvent): void => onWheel(event);
    // React listens passively, and could not keep the page where it is
    held?.addEventListener('wheel', listen, { passive: false });
    return () => held?.removeEventListener('wheel', listen);
  }, []);
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
  const letGo = (): void => {
    from.current = null;
  };
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot take the focus that arrow keys need
    <div
      ref={dial}
      className="knob"
      data-mark={isAsked ? 'asked' : isWrong ? 'wrong' : undefined}
      role="group"
      aria-label={name}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: arrow keys turn it
      tabIndex={0}
      onKeyDown={onKeyDown}
      onPointerDown={(event) => {
        if (event.target instanceof HTMLButtonElement) return;
        from.current = event.clientX;
        event.currentTarget.setPointerCapture(event.pointerId);
      }}
      onPointerMove={onPointerMove}
      onPointerUp={letGo}
      onPointerCancel={letGo}
    >
      <span className="knob-name">
        {name}
        {isAsked && <strong className="knob-mark">▸ {walkTexts.asked}</strong>}
        {isWrong && <strong className="knob-mark">✕ {walkTexts.notAsked}</strong>}
        <span className="grip" aria-hidden="true" />
      </span>
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
