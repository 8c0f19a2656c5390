import type { Forecast } from '@coreward/bench';
import { type Remote, wrap } from 'comlink';
import { useEffect, useRef, useState } from 'react';
import { type AskNewest, askNewest } from './ask-newest.ts';
import type { ForecastQuestion, ForecastWorker } from './forecast-worker.ts';

/** The newest forecast there is, and whether it answers the newest question. */
export interface ForecastState {
  readonly forecast: Forecast | null;
  readonly isFresh: boolean;
  /** Whether the newest question could not be answered. */
  readonly hasFailed: boolean;
}

/** A hand that rests so long is asked about, ms. */
const handPause = 30;

/** Forecasts with their ranges, worked out apart from the page so that no hand is held up. */
export function useForecast(text: string, inHand: ForecastQuestion['inHand']): ForecastState {
  const asker = useRef<AskNewest<ForecastQuestion> | null>(null);
  const [told, setTold] = useState<{
    readonly question: ForecastQuestion;
    readonly forecast: Forecast;
  } | null>(null);
  const [failed, setFailed] = useState<ForecastQuestion | null>(null);
  useEffect(() => {
    const worker = new Worker(new URL('./forecast-worker.ts', import.meta.url), { type: 'module' });
    const remote: Remote<ForecastWorker> = wrap<ForecastWorker>(worker);
    asker.current = askNewest(
      (question: ForecastQuestion) => remote.forecast(question) as Promise<Forecast>,
      (question, forecast) => setTold({ question, forecast }),
      (question) => setFailed(question),
    );
    return () => {
      asker.current?.stop();
      asker.current = null;
      worker.terminate();
    };
  }, []);
  const key = inHand?.key ?? null;
  const value = inHand?.value ?? null;
  useEffect(() => {
    const isHeld = key !== null && value !== null;
    const ask = () => asker.current?.ask({ text, inHand: isHeld ? { key, value } : null });
    if (!isHeld) {
      ask();
      return;
    }
    // a hand on its way would throw each answer away, and the work would be missed by the drawing
    const pause = setTimeout(ask, handPause);
    return () => clearTimeout(pause);
  }, [text, key, value]);
  const isOf = ({ text: asked, inHand: held }: ForecastQuestion) =>
    asked === text && (held?.key ?? null) === key && (held?.value ?? null) === value;
  return {
    forecast: told?.forecast ?? null,
    isFresh: told !== null && isOf(told.question),
    hasFailed: failed !== null && isOf(failed),
  };
}
