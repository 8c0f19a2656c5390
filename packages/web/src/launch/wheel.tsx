import { type Dimension, type Moved, movedByAmount, movedByFactor } from '@coreward/bench';
import { type JSX, type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { launchTexts } from '../texts/launch.ts';

interface WheelProps {
  readonly label: string;
  /** The quantity as it is written. */
  readonly text: string;
  readonly dimension: Dimension;
  /** While it turns; null: let go without a change. */
  readonly onHold: (moved: Moved | null) => void;
  readonly onDone: (text: string) => void;
}

/** By how much one step of a key and one pixel of the hand turn it: a factor; of what is zero an amount. */
const step = { key: 1.01, page: 1.1, pixel: 1.0025, keyAmount: 1, pixelAmount: 0.2 } as const;
/** Keys pause so long before a change is taken as made, ms. */
const keyPause = 700;

/** A thumbwheel beside a length: drag it, or turn it with the arrow keys; the light follows. */
export function Wheel({ label, text, dimension, onHold, onDone }: WheelProps): JSX.Element | null {
  const [turned, setTurned] = useState<Moved | null>(null);
  // a hand moves and lets go before the move is drawn
  const newest = useRef<Moved | null>(null);
  const [offset, setOffset] = useState(0);
  const drag = useRef<{ readonly from: number; readonly text: string } | null>(null);
  const pause = useRef<ReturnType<typeof setTimeout> | null>(null);
  const leave = useRef(letGo);
  leave.current = letGo;
  // whoever closes the tag within the pause has made the change all the same
  useEffect(() => () => leave.current(pause.current === null ? null : newest.current), []);
  const asWritten = useMemo(() => {
    const isZero = movedByFactor(text, dimension, 2)?.value === 0;
    return { isZero, probe: isZero ? movedByAmount(text, dimension, 0) : movedByFactor(text, dimension, 1) };
  }, [text, dimension]);
  if (asWritten.probe === null) return null;
  const { isZero } = asWritten;
  const now = turned?.text ?? text;
  const { value } = turned ?? asWritten.probe;

  const turnBy = (from: string, pixels: number): Moved | null =>
    isZero
      ? movedByAmount(from, dimension, pixels * step.pixelAmount)
      : movedByFactor(from, dimension, step.pixel ** pixels);

  function hold(moved: Moved | null): void {
    if (moved === null) return;
    newest.current = moved;
    setTurned(moved);
    onHold(moved);
  }

  function letGo(moved: Moved | null): void {
    if (pause.current !== null) clearTimeout(pause.current);
    pause.current = null;
    drag.current = null;
    newest.current = null;
    setTurned(null);
    if (moved === null || moved.text === text) onHold(null);
    else onDone(moved.text);
  }

  function onPointerDown(event: PointerEvent<HTMLDivElement>): void {
    if (event.button !== 0) return;
    event.currentTarget.setPointerCapture(event.pointerId);
    if (pause.current !== null) clearTimeout(pause.current);
    pause.current = null;
    drag.current = { from: event.clientX, text: now };
  }

  function onPointerMove(event: PointerEvent<HTMLDivElement>): void {
    if (drag.current === null) return;
    const pixels = event.clientX - drag.current.from;
    setOffset(pixels);
    hold(turnBy(drag.current.text, pixels));
  }

  function onKeyDown(event: KeyboardEvent<HTMLDivElement>): void {
    if (event.key === 'Escape' && turned !== null) {
      event.preventDefault();
      event.stopPropagation();
      letGo(null);
      return;
    }
    const factor = {
      ArrowRight: step.key,
      ArrowUp: step.key,
      ArrowLeft: 1 / step.key,
      ArrowDown: 1 / step.key,
      PageUp: step.page,
      PageDown: 1 / step.page,
    }[event.key];
    if (factor === undefined) return;
    event.preventDefault();
    event.stopPropagation();
    const moved = isZero
      ? movedByAmount(now, dimension, factor > 1 ? step.keyAmount : -step.keyAmount)
      : movedByFactor(now, dimension, factor);
    setOffset((before) => before + (factor > 1 ? 4 : -4));
    hold(moved);
    if (pause.current !== null) clearTimeout(pause.current);
    pause.current = setTimeout(() => leave.current(newest.current), keyPause);
  }

  return (
    <div
      className="wheel"
      role="slider"
      tabIndex={0}
      aria-label={launchTexts.turn(label)}
      aria-valuenow={value}
      aria-valuetext={now}
      style={{ '--turned': `${offset}px` } as Record<string, string>}
      onPointerDown={onPointerDown}
      onPointerMove={onPointerMove}
      onPointerUp={() => drag.current !== null && letGo(newest.current)}
      onPointerCancel={() => letGo(null)}
      onKeyDown={onKeyDown}
    />
  );
}
