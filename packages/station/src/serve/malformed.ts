import type { RefusalParts } from '@coreward/bench';
import type { z } from '@coreward/contract';
import { Declined } from '../declined.ts';

const mostTold = 20;

/**
 * What was sent, in the form it was asked for.
 *
 * @throws {Declined} with each place that has another
 */
export function checked<T extends z.ZodMiniType>(schema: T, sent: unknown, where: string): z.infer<T> {
  const found = schema.safeParse(sent);
  if (found.success) return found.data;
  throw new Declined(
    'malformed',
    found.error.issues.slice(0, mostTold).map((issue): RefusalParts => {
      const place = [where, ...issue.path.map(String)].join('.');
      switch (issue.code) {
        case 'unrecognized_keys':
          return {
            where: place,
            what: `nobody knows \`${issue.keys.join('`, `').slice(0, 200)}\` here`,
            mend: 'Leave it out.',
          };
        case 'too_big':
          return { where: place, what: `this is more than ${issue.maximum}`, mend: 'Send less.' };
        case 'too_small':
          return { where: place, what: `this is less than ${issue.minimum}`, mend: 'Send more.' };
        default:
          return {
            where: place,
            what: 'the station expects something else here',
            mend: 'Reload the page, so that it is of the station’s own version.',
          };
      }
    }),
  );
}
