import type { Who } from '../access/session.ts';
import { Declined } from '../declined.ts';

/**
 * Turns away whoever does not sit at the station's own computer.
 *
 * @param what that a paired device may not do: "revoke another device"
 * @throws {Declined}
 */
export function mustBeHere(who: Who, what: string): void {
  if (who.kind === 'here') return;
  throw new Declined('forbidden', {
    where: 'device',
    what: `a paired device may not ${what}`,
    mend: 'Do it on the station’s own computer.',
  });
}
