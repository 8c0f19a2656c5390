import { createHash, createHmac, timingSafeEqual } from 'node:crypto';
import type { BenchBook } from '../bench-book/bench-book.ts';
import type { Device } from '../bench-book/devices.ts';
import type { Door } from './door.ts';

/** Who asks. */
export type Who =
  | { readonly kind: 'here' }
  | { readonly kind: 'paired'; readonly device: Device }
  | { readonly kind: 'stranger' };

/**
 * The cookie's name. Browsers keep the cookies of all ports of a host together, so that the port is in it; `__Host-`
 * makes a browser insist on TLS, this host alone and every path.
 *
 * @source RFC 6265bis, 4.1.3.2, cookie name prefixes; from memory
 */
export const cookieName = ({ kind, port }: Door): string =>
  kind === 'here' ? `coreward-${port}` : `__Host-coreward-${port}`;

/** What a page is given to be known by. `HttpOnly`: no script sees it; `SameSite=Strict`: no foreign page sends it. */
export function cookieFor(door: Door, secret: string): string {
  const common = `${cookieName(door)}=${secret}; Path=/; HttpOnly; SameSite=Strict`;
  // 400 days are the longest a browser keeps one
  return door.kind === 'here' ? common : `${common}; Secure; Max-Age=${400 * 86_400}`;
}

/** The value of a cookie in a `Cookie` header. */
export function cookieIn(header: string | null | undefined, name: string): string | null {
  for (const pair of (header ?? '').split(';')) {
    const at = pair.indexOf('=');
    if (at > 0 && pair.slice(0, at).trim() === name) return pair.slice(at + 1).trim();
  }
  return null;
}

/** What a page on this computer is known by: the same as long as the bench book lives, so that it outlives a restart. */
export const secretHere = (book: BenchBook): string =>
  createHmac('sha256', book.key).update('here').digest('base64url');

/** Of a device's secret only this is kept. */
export const hashOf = (secret: string): Buffer => createHash('sha256').update(secret).digest();

/** Who shows this cookie at this door. A device's secret is worth nothing at the other one, and the other way round. */
export function whoShows(cookie: string | null, door: Door, book: BenchBook): Who {
  if (cookie === null || cookie.length > 200) return { kind: 'stranger' };
  switch (door.kind) {
    case 'here':
      // compared by their hashes, which takes the same time for every wrong one
      return timingSafeEqual(hashOf(cookie), hashOf(secretHere(book)))
        ? { kind: 'here' }
        : { kind: 'stranger' };
    case 'network': {
      const device = book.devices.byHash(hashOf(cookie));
      return device === null ? { kind: 'stranger' } : { kind: 'paired', device };
    }
  }
}
