import { forecast, type Launch, launchWith, readLaunch } from '@coreward/bench';
import { expose } from 'comlink';
import { type ToldForecast, toldForecast } from './told-forecast.ts';

/** A launch document, and what a hand holds of it: another value (SI) at one key. */
export interface ForecastQuestion {
  readonly text: string;
  readonly inHand: { readonly key: string; readonly value: number } | null;
}

/** What the worker does, apart from the hand. */
export interface ForecastWorker {
  readonly forecast: (question: ForecastQuestion) => ToldForecast;
}

/** While a hand turns a length the text stays as it is, and to read it takes a tenth of a forecast. */
function readOnce(): (text: string) => Launch {
  let last: { readonly text: string; readonly launch: Launch } | null = null;
  return (text) => {
    if (last?.text !== text) last = { text, launch: readLaunch(text, 'launch') };
    return last.launch;
  };
}

const launchOf = readOnce();

const worker: ForecastWorker = {
  forecast({ text, inHand }) {
    const launch = launchOf(text);
    return toldForecast(forecast(inHand === null ? launch : launchWith(launch, inHand.key, inHand.value)));
  },
};

expose(worker);
