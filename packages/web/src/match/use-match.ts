import { useCallback, useEffect, useRef, useState } from 'react';
import type { MatchQuestion, MatchSaid } from './protocol.ts';

export type MatchState = { readonly kind: 'idle' | 'stopped' } | MatchSaid;

type Done = Extract<MatchSaid, { kind: 'done' }>;

export interface Matching {
  /** How the matching stands. */
  readonly state: MatchState;
  /** The last ranking there was. */
  readonly result: Done | null;
  /** Whether it answers the question that is asked. */
  readonly isFresh: boolean;
  readonly stop: () => void;
  readonly again: () => void;
}

/** Matches in a worker, anew whenever the question changes; `null` asks nothing. */
export function useMatch(question: MatchQuestion | null): Matching {
  const [state, setState] = useState<MatchState>({ kind: 'idle' });
  const [found, setFound] = useState<{ readonly of: string; readonly result: Done } | null>(null);
  const [round, setRound] = useState(0);
  const worker = useRef<Worker | null>(null);
  const asked = question === null ? null : JSON.stringify(question);
  const stop = useCallback((): void => {
    worker.current?.terminate();
    worker.current = null;
  }, []);
  // biome-ignore lint/correctness/useExhaustiveDependencies: `round` asks the same question again
  useEffect(() => {
    if (asked === null) {
      setState({ kind: 'idle' });
      return;
    }
    const own = new Worker(new URL('./match.worker.ts', import.meta.url), { type: 'module' });
    worker.current = own;
    own.onmessage = ({ data }: MessageEvent<MatchSaid>): void => {
      setState(data);
      if (data.kind === 'done') setFound({ of: asked, result: data });
      if (data.kind !== 'progress') own.terminate();
    };
    own.onerror = ({ message }): void => setState({ kind: 'fault', message });
    setState({ kind: 'progress', done: 0, total: 0, best: null });
    own.postMessage(JSON.parse(asked));
    return () => own.terminate();
  }, [asked, round]);
  return {
    state,
    result: found?.result ?? null,
    isFresh: found !== null && found.of === asked,
    stop: () => {
      stop();
      setState({ kind: 'stopped' });
    },
    again: () => setRound((count) => count + 1),
  };
}
