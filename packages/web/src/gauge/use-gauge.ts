import type { Measured, Sheet } from '@coreward/bench';
import { type Remote, wrap } from 'comlink';
import { useEffect, useRef, useState } from 'react';
import { type AskNewest, askNewest } from '../launch/ask-newest.ts';
import { gaugeTexts } from '../texts/gauge.ts';
import type { GaugeQuestion, GaugeWorker } from './protocol.ts';

/** What the newest readings say; `null` before there are any. */
export interface GaugeState {
  readonly measured: Measured | null;
  /** Whether that answers what stands on the page now. */
  readonly isFresh: boolean;
  readonly fault: string | null;
}

/** Measures in a worker, anew with every key; `null` asks nothing. */
export function useGauge(
  gauge: string,
  sheet: Sheet | null,
  picture: File | null,
  reverse: File | null,
): GaugeState {
  const asker = useRef<AskNewest<GaugeQuestion> | null>(null);
  const [told, setTold] = useState<{ readonly of: Sheet; readonly measured: Measured } | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    const worker = new Worker(new URL('./gauge-worker.ts', import.meta.url), { type: 'module' });
    const remote: Remote<GaugeWorker> = wrap<GaugeWorker>(worker);
    asker.current = askNewest(
      (question: GaugeQuestion) => remote.measure(question) as Promise<Measured>,
      ({ sheet: of }, measured) => {
        setFault(null);
        setTold({ of, measured });
      },
      (_, error) => setFault(error instanceof Error ? error.message : String(error)),
    );
    return () => {
      asker.current?.stop();
      asker.current = null;
      worker.terminate();
    };
  }, []);
  useEffect(() => {
    if (sheet === null) setTold(null);
    else asker.current?.ask({ gauge, sheet, picture, reverse, file: gaugeTexts.fileName });
  }, [gauge, sheet, picture, reverse]);
  return { measured: told?.measured ?? null, isFresh: told !== null && told.of === sheet, fault };
}
