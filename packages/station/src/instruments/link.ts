import type { DeviceLink } from '@coreward/contract';
import type { Connection, LinkEvents, LinkTrouble } from './connection.ts';
import { serialConnection } from './serial-connection.ts';
import { tcpConnection } from './tcp-connection.ts';

/** One try to reach a device. */
export const connect = (link: DeviceLink, events: LinkEvents): Connection =>
  link.by === 'tcp' ? tcpConnection(link, events) : serialConnection(link, events);

/** Pauses before a device is tried again, ms; the last one goes on. */
const pauses = [250, 500, 1000, 2000, 5000] as const;

/** A connection that is made anew whenever it drops. */
export interface LastingLink {
  readonly send: (text: string) => void;
  /** Drops what there is and begins anew. */
  readonly renew: (trouble: LinkTrouble) => void;
  readonly end: () => void;
}

/** A connection that is tried again, with growing pauses, until it is ended. */
export function lastingLink(link: DeviceLink, events: LinkEvents): LastingLink {
  let connection: Connection | null = null;
  let retry: NodeJS.Timeout | null = null;
  let tries = 0;
  let ended = false;

  function open(): void {
    retry = null;
    connection = connect(link, {
      opened: events.opened,
      said: (text) => {
        // it is there and talks: should it drop again, it is tried again soon
        tries = 0;
        events.said(text);
      },
      dropped,
    });
  }

  function dropped(trouble: LinkTrouble): void {
    connection = null;
    if (ended) return;
    events.dropped(trouble);
    const pause = pauses[Math.min(tries, pauses.length - 1)];
    tries += 1;
    if (retry === null) retry = setTimeout(open, pause);
  }

  open();
  return {
    send: (text) => connection?.send(text),
    renew(trouble) {
      connection?.end();
      dropped(trouble);
    },
    end() {
      ended = true;
      if (retry !== null) clearTimeout(retry);
      connection?.end();
    },
  };
}
