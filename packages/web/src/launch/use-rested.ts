import { useCallback, useEffect, useRef, useState } from 'react';

/** A hand that pauses so long is followed at once by all, ms. */
const pause = 80;
/** Behind a hand that goes on moving it follows so often, ms: each time costs a frame. */
const between = 1000;

/**
 * The newest value or, while a hand is at it, one that is a moment old: for what is slow to show and would hold up the
 * light that follows the hand.
 */
export function useRested<T>(value: T, inHand: boolean): T {
  const [, wake] = useState(0);
  const newest = useRef(value);
  const rested = useRef(value);
  newest.current = value;
  if (!inHand) rested.current = value;
  const follow = useCallback((): void => {
    if (rested.current === newest.current) return;
    rested.current = newest.current;
    wake((count) => count + 1);
  }, []);
  useEffect(() => {
    if (!inHand || rested.current === value) return;
    const wait = setTimeout(follow, pause);
    return () => clearTimeout(wait);
  }, [inHand, value, follow]);
  useEffect(() => {
    if (!inHand) return;
    const often = setInterval(follow, between);
    return () => clearInterval(often);
  }, [inHand, follow]);
  return rested.current;
}
