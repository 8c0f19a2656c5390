import type { TurnNow } from '@coreward/bench';
import { useEffect, useRef } from 'react';
import type { WalkHeld } from './use-walk.ts';

/**
 * Answers a step once its reading rests at its goal. Every open page does, and the station takes the first.
 *
 * @param key of the step; each is answered once
 */
export function useGoingOn(key: string, isOn: boolean, turn: TurnNow | null, act: WalkHeld['act']): void {
  const done = useRef<string | null>(null);
  const take = isOn && turn?.isSettled === true ? turn.take : null;
  useEffect(() => {
    if (take === null || done.current === key) return;
    done.current = key;
    act({ do: 'answer', answer: take }, true);
  }, [take, key, act]);
}
