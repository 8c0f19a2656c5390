import { StringDecoder } from 'node:string_decoder';
import type { SerialLink } from '@coreward/contract';
import { SerialPort } from 'serialport';
import type { Connection, LinkEvents } from './connection.ts';
import { linkTrouble } from './link-trouble.ts';

/** Eight bits, no parity, one stop bit, no handshake: what hobby boards and meters speak. Common practice, no source. */
export function serialConnection(
  { path, baudRate }: SerialLink,
  { opened, said, dropped }: LinkEvents,
): Connection {
  const port = new SerialPort({ path, baudRate, autoOpen: false });
  const decoder = new StringDecoder('utf8');
  let ended = false;
  const end = () => {
    ended = true;
    // a port that has dropped already would answer `close` with an error
    if (port.isOpen) port.close(() => {});
  };
  const drop = (error: Error | null) => {
    if (ended) return;
    end();
    dropped(linkTrouble(path, error));
  };
  port.on('data', (bytes: Buffer) => {
    if (!ended) said(decoder.write(bytes));
  });
  // always listened to, also after the end: an error that nobody hears would stop the station
  port.on('error', drop);
  port.on('close', () => drop(null));
  port.open((error) => {
    if (error !== null && error !== undefined) drop(error);
    else if (ended) port.close(() => {});
    else opened();
  });
  return {
    send: (text) => {
      if (port.isOpen)
        port.write(text, 'utf8', (error) => error !== null && error !== undefined && drop(error));
    },
    end,
  };
}
