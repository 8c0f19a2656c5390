import { useEffect, useState } from 'react';
import { useKeeping } from '../keeping/use-keeping.ts';

/** So long after a step is shown no press counts for it, ms: a double tap was meant for the step before. */
const pause = 400;

/** Whether what is shown under this key was there long enough to be pressed on purpose. */
export function usePause(key: string): boolean {
  const { world } = useKeeping();
  const [rested, setRested] = useState<string | null>(null);
  useEffect(() => world.after(pause, () => setRested(key)), [world, key]);
  return rested === key;
}
