import type { Forecast } from './expected.ts';

/** A forecast before it has been talked about. */
export type Told = Omit<Forecast, 'remarks'>;
