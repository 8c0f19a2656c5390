import { between } from '../between-marks.ts';
import { measuredTable } from './measured-launches.ts';
import { workedTable } from './worked-examples.ts';

/** docs/published-launches.md with its two tables as they are now. */
export const withPublishedLaunches = (page: string): string =>
  between(between(page, 'measured launches', measuredTable()), 'worked examples', workedTable());
