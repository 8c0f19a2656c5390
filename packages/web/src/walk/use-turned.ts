import { type Screw, type TurnedScrew, turnedOf, withTurned } from '@coreward/bench';
import { useState } from 'react';

/**
 * The screw that was turned last on this page in the step of this key, unless it was turned back; null: none was, or nobody
 * knows. Another page, and a hand at a real bench, turn without being seen.
 */
export function useTurned(key: string): readonly [Screw | null, (screw: Screw, turns: number) => void] {
  const [last, setLast] = useState<{ readonly key: string; readonly turned: TurnedScrew } | null>(null);
  const note = (screw: Screw, turns: number): void =>
    setLast((before) => ({
      key,
      turned: withTurned(before?.key === key ? before.turned : null, screw, turns),
    }));
  return [turnedOf(last?.key === key ? last.turned : null), note];
}
