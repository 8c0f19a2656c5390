import type { TurnNow } from '@coreward/bench';
import { useEffect, useEffectEvent, useRef, useState } from 'react';
import { useKeeping } from '../keeping/use-keeping.ts';
import type { WalkHeld } from './use-walk.ts';

/** A page that did not answer last lets the others go first for so long, ms, and one of sixteen steps more, lest two be as late. */
const [yieldsFor, oneStep] = [1_000, 150] as const;

/**
 * Answers a step once its reading rests at its goal. The page that did the last act of the walk answers at once; the others
 * wait, and answer only if nobody did, because that page was closed or lost its connection.
 *
 * @param key of the step; each is answered once
 */
export function useGoingOn(
  key: string,
  isOn: boolean,
  turn: TurnNow | null,
  { leads, act }: Pick<WalkHeld, 'leads' | 'act'>,
): void {
  const { world } = useKeeping();
  const [late] = useState(() => yieldsFor + oneStep * Number.parseInt(world.newId().slice(0, 1), 16));
  const done = useRef<string | null>(null);
  const take = isOn && turn?.isSettled === true ? turn.take : null;
  const answer = useEffectEvent(() => {
    if (take === null || done.current === key) return;
    done.current = key;
    act({ do: 'answer', answer: take }, true);
  });
  const isSettled = take !== null;
  // biome-ignore lint/correctness/useExhaustiveDependencies: another step (`key`) begins its own waiting
  useEffect(() => {
    if (!isSettled) return;
    if (!leads) return world.after(late, answer);
    answer();
  }, [isSettled, key, leads, late, world]);
}
