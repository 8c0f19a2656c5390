import { type FocusEvent, useEffect, useRef } from 'react';

interface FocusHandlers {
  readonly onFocus: (event: FocusEvent<HTMLElement>) => void;
  readonly onBlur: (event: FocusEvent<HTMLElement>) => void;
}

/**
 * Tells when the focus has left an element for good. If it leaves because something else is being pressed, that press
 * is waited for: whatever changes on the page then no longer moves things away from under the finger, and it is still
 * told before anybody hears of the click.
 */
export function useSettledBlur(onEnter: () => void, onLeave: () => void): FocusHandlers {
  const pressed = useRef(false);
  const stop = useRef<(() => void) | null>(null);
  const leave = useRef(onLeave);
  leave.current = onLeave;
  useEffect(() => () => stop.current?.(), []);
  return {
    onFocus: (event) => {
      onEnter();
      if (stop.current !== null) return;
      const { ownerDocument } = event.currentTarget;
      const down = (): void => {
        pressed.current = true;
      };
      const up = (): void => {
        pressed.current = false;
      };
      ownerDocument.addEventListener('pointerdown', down, true);
      ownerDocument.addEventListener('pointerup', up, true);
      stop.current = () => {
        ownerDocument.removeEventListener('pointerdown', down, true);
        ownerDocument.removeEventListener('pointerup', up, true);
        stop.current = null;
      };
    },
    onBlur: (event) => {
      if (event.currentTarget.contains(event.relatedTarget)) return;
      stop.current?.();
      if (!pressed.current) {
        leave.current();
        return;
      }
      pressed.current = false;
      const { ownerDocument } = event.currentTarget;
      const settled = (): void => {
        ownerDocument.removeEventListener('pointerup', settled, true);
        ownerDocument.removeEventListener('pointercancel', settled, true);
        leave.current();
      };
      ownerDocument.addEventListener('pointerup', settled, true);
      ownerDocument.addEventListener('pointercancel', settled, true);
    },
  };
}
