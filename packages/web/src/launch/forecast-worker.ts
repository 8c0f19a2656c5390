import { type Forecast, forecast, launchWith, readLaunch } from '@coreward/bench';
import { expose } from 'comlink';

/** A launch document, and what a hand holds of it: another value (SI) at one key. */
export interface ForecastQuestion {
  readonly text: string;
  readonly inHand: { readonly key: string; readonly value: number } | null;
}

/** What the worker does, apart from the hand. */
export interface ForecastWorker {
  readonly forecast: (question: ForecastQuestion) => Forecast;
}

const worker: ForecastWorker = {
  forecast({ text, inHand }) {
    const launch = readLaunch(text, 'launch');
    return forecast(inHand === null ? launch : launchWith(launch, inHand.key, inHand.value));
  },
};

expose(worker);
