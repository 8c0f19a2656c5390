import { useEffect, useRef } from 'react';

/** So many times, each in a pause of its own. */
const times = 12;

/**
 * Does a piece of work a few times in idle moments and throws its result away: a browser compiles what was done before,
 * and the first moves of a hand follow as quickly as the later ones.
 *
 * @param work what a hand will ask for, or null where there is no hand to expect
 */
export function useRehearsal(work: (() => void) | null): void {
  const newest = useRef(work);
  newest.current = work;
  const expected = work !== null;
  useEffect(() => {
    if (!expected || typeof requestIdleCallback !== 'function') return;
    let left = times;
    let next = requestIdleCallback(rehearse);
    function rehearse(): void {
      newest.current?.();
      left -= 1;
      if (left > 0) next = requestIdleCallback(rehearse);
    }
    return () => cancelIdleCallback(next);
  }, [expected]);
}
