import { write } from 'node:fs';
import { StringDecoder } from 'node:string_decoder';
import type { SerialLink } from '@coreward/contract';
import { SerialPort } from 'serialport';
import type { Connection, LinkEvents } from './connection.ts';
import { linkTrouble } from './link-trouble.ts';

/** So often it is asked whether the device is still there, ms: a hand that pulls a plug has not let go of it by then. */
const glanceEvery = 500;
const nothing = Buffer.alloc(0);

/** The open file under a port, where the system has one. */
const fileOf = ({ port }: SerialPort): number | null =>
  process.platform !== 'win32' && port !== undefined && 'fd' in port && typeof port.fd === 'number'
    ? port.fd
    : null;

/**
 * Asks now and then whether the device still hangs on an open port; writing nothing fails once it does not (EIO).
 * The library itself misses a device that goes while a read is under way: the end of its file is read again, for ever.
 * @returns ends the asking
 */
function glance(port: SerialPort, gone: (error: Error) => void): () => void {
  const timer = setInterval(() => {
    const file = fileOf(port);
    if (file === null) return;
    write(file, nothing, (error) => {
      // a port that is being written to says only "later"
      if (error !== null && error.code !== 'EAGAIN' && port.isOpen) gone(error);
    });
  }, glanceEvery);
  return () => clearInterval(timer);
}

/** Eight bits, no parity, one stop bit, no handshake: what hobby boards and meters speak. Common practice, no source. */
export function serialConnection(
  { path, baudRate }: SerialLink,
  { opened, said, dropped }: LinkEvents,
): Connection {
  const port = new SerialPort({ path, baudRate, autoOpen: false });
  const decoder = new StringDecoder('utf8');
  let ended = false;
  let leave = () => {};
  const end = () => {
    ended = true;
    leave();
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
    else {
      leave = glance(port, drop);
      opened();
    }
  });
  return {
    send: (text) => {
      if (port.isOpen)
        port.write(text, 'utf8', (error) => error !== null && error !== undefined && drop(error));
    },
    end,
  };
}
