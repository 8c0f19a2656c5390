import { Declined } from '../declined.ts';
import { type Door, originOf } from './door.ts';

/** What a request says of where it comes from. */
export interface Comer {
  readonly method: string;
  readonly host: string | null;
  readonly origin: string | null;
  /** `Sec-Fetch-Site`, which a page cannot set by itself. */
  readonly site: string | null;
}

/**
 * Turns away what was not sent by one of the station's own pages.
 *
 * @param hosts under which the door answers
 * @throws {Declined}
 * @source Fetch Metadata and the Origin header (Fetch standard, RFC 6454); from memory
 */
export function mustComeFromUs(
  { method, host, origin, site }: Comer,
  door: Door,
  hosts: readonly string[],
): void {
  mustKnowHost(host, hosts);
  const own = originOf(door, host ?? '');
  if (origin !== null && origin !== own) throw foreign(origin);
  if (site !== null && site !== 'same-origin' && !(site === 'none' && method === 'GET')) throw foreign(site);
  // a browser says from where a change is asked for; what does not say so is none of our pages
  if (origin === null && method !== 'GET') throw foreign('no `Origin`');
}

/**
 * Turns away what was sent to another name than ours.
 *
 * @throws {Declined}
 */
export function mustKnowHost(host: string | null, hosts: readonly string[]): void {
  if (host !== null && hosts.includes(host.toLowerCase())) return;
  throw new Declined('forbidden', {
    where: 'Host',
    what: 'the station does not go by this name',
    mend: 'Open the address that `coreward` printed when it began.',
  });
}

const foreign = (from: string): Declined =>
  new Declined('forbidden', {
    where: 'Origin',
    what: `this was sent by a foreign page (${from.slice(0, 100)})`,
    mend: 'Open the station’s own page and do it there.',
  });
