import { type Remote, wrap } from 'comlink';
import { useCallback, useEffect, useRef, useState } from 'react';
import { type AskNewest, askNewest } from './ask-newest.ts';
import type { ForecastQuestion, ForecastWorker } from './forecast-worker.ts';
import type { ToldForecast } from './told-forecast.ts';

/** The newest forecast there is, and how it stands with the newest question. */
export interface ForecastState {
  readonly forecast: ToldForecast | null;
  /** `failed`: it could not be answered; `stopped`: somebody did not want to wait. */
  readonly state: 'fresh' | 'coming' | 'failed' | 'stopped';
  /** Whether one has waited so long that one may want to stop it. */
  readonly takesLong: boolean;
  readonly stop: () => void;
  /** Asks again what was stopped. */
  readonly again: () => void;
}

/** A hand that rests so long is asked about, ms. */
const handPause = 30;

/** A forecast that takes longer can be stopped, ms; the usual one takes a tenth of it. */
const long = 1200;

/** Forecasts with their ranges, worked out apart from the page so that no hand is held up. */
export function useForecast(text: string, inHand: ForecastQuestion['inHand']): ForecastState {
  const asker = useRef<Asker | null>(null);
  const [told, setTold] = useState<{
    readonly question: ForecastQuestion;
    readonly forecast: ToldForecast;
  } | null>(null);
  const [failed, setFailed] = useState<ForecastQuestion | null>(null);
  const [stopped, setStopped] = useState<ForecastQuestion | null>(null);
  const [takesLong, setTakesLong] = useState(false);
  const end = useCallback((): void => {
    asker.current?.end();
    asker.current = null;
  }, []);
  const awaken = useCallback((): Asker => {
    asker.current ??= newAsker((answered, forecast) => setTold({ question: answered, forecast }), setFailed);
    return asker.current;
  }, []);
  const ask = useCallback((question: ForecastQuestion): void => awaken().ask(question), [awaken]);
  useEffect(() => end, [end]);
  const key = inHand?.key ?? null;
  const value = inHand?.value ?? null;
  const isHeld = key !== null && value !== null;
  useEffect(() => {
    const question = { text, inHand: isHeld ? { key, value } : null };
    setStopped(null);
    if (!isHeld) {
      ask(question);
      return;
    }
    // a hand on its way would throw each answer away, and the work would be missed by the drawing
    const pause = setTimeout(() => ask(question), handPause);
    return () => clearTimeout(pause);
  }, [text, key, value, isHeld, ask]);
  const isAsked = (question: ForecastQuestion | null) =>
    question !== null &&
    question.text === text &&
    (question.inHand?.key ?? null) === key &&
    (question.inHand?.value ?? null) === value;
  const state = isAsked(told?.question ?? null)
    ? 'fresh'
    : isAsked(failed)
      ? 'failed'
      : isAsked(stopped)
        ? 'stopped'
        : 'coming';
  useEffect(() => {
    setTakesLong(false);
    if (state !== 'coming' || isHeld) return;
    const wait = setTimeout(() => setTakesLong(true), long);
    return () => clearTimeout(wait);
  }, [state, isHeld]);
  return {
    forecast: told?.forecast ?? null,
    state,
    takesLong,
    stop: () => {
      end();
      setStopped({ text, inHand });
    },
    again: () => {
      setStopped(null);
      ask({ text, inHand });
    },
  };
}

interface Asker {
  readonly ask: AskNewest<ForecastQuestion>['ask'];
  /** The worker ends where it is: nothing is answered any more. */
  readonly end: () => void;
}

function newAsker(
  tell: (question: ForecastQuestion, forecast: ToldForecast) => void,
  fail: (question: ForecastQuestion) => void,
): Asker {
  const worker = new Worker(new URL('./forecast-worker.ts', import.meta.url), { type: 'module' });
  const remote: Remote<ForecastWorker> = wrap<ForecastWorker>(worker);
  const newest = askNewest(
    (question: ForecastQuestion) => remote.forecast(question) as Promise<ToldForecast>,
    tell,
    (question) => fail(question),
  );
  return {
    ask: newest.ask,
    end: () => {
      newest.stop();
      worker.terminate();
    },
  };
}
