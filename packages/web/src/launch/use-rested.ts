import { useEffect, useRef, useState } from 'react';

/** While a hand moves something, what is slow to show follows it so often, ms. */
const between = 400;

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
  useEffect(() => {
    if (!inHand) return;
    const follow = setInterval(() => {
      if (rested.current === newest.current) return;
      rested.current = newest.current;
      wake((count) => count + 1);
    }, between);
    return () => clearInterval(follow);
  }, [inHand]);
  return rested.current;
}
