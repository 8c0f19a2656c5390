import { connect } from 'node:net';
import type { TcpLink } from '@coreward/contract';
import type { Connection, LinkEvents } from './connection.ts';
import { linkTrouble } from './link-trouble.ts';

/** A device that does not answer the call for so long is not there, ms. */
const patience = 5_000;

/** Where a device is, as addresses are written. */
export const nameOfTcp = ({ host, port }: TcpLink): string => `${host}:${port}`;

/** One connection to a device by TCP. */
export function tcpConnection(link: TcpLink, { opened, said, dropped }: LinkEvents): Connection {
  const socket = connect({ host: link.host, port: link.port, noDelay: true });
  let failed: Error | null = null;
  let ended = false;
  socket.setEncoding('utf8');
  const late = setTimeout(() => {
    failed = Object.assign(new Error('no answer'), { code: 'ETIMEDOUT' });
    socket.destroy();
  }, patience);
  socket.on('connect', () => {
    clearTimeout(late);
    if (!ended) opened();
  });
  socket.on('data', (text: string) => {
    if (!ended) said(text);
  });
  // always listened to, also after the end: an error that nobody hears would stop the station
  socket.on('error', (error) => {
    failed = error;
  });
  socket.on('close', () => {
    clearTimeout(late);
    if (!ended) dropped(linkTrouble(nameOfTcp(link), failed));
    ended = true;
  });
  return {
    send: (text) => {
      if (!socket.destroyed) socket.write(text);
    },
    end() {
      ended = true;
      clearTimeout(late);
      socket.destroy();
    },
  };
}
