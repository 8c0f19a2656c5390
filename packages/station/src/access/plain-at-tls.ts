import type { Server } from 'node:https';
import type { Socket } from 'node:net';

/** So long somebody who has connected may say nothing, ms; a browser speaks at once. */
const silence = 5_000;
/** So long a plain caller has to take the answer, ms. */
const parting = 2_000;
/** What every TLS connection begins with. @source RFC 8446, section 5.1: the content type of a handshake; from memory */
const handshake = 22;

const text = 'This address speaks https. Open it again with https:// in front.\n';
/** The same words for everybody, with nothing of the station in them. */
const answer = [
  'HTTP/1.1 400 Bad Request',
  'Content-Type: text/plain; charset=utf-8',
  `Content-Length: ${text.length}`,
  'X-Content-Type-Options: nosniff',
  'Cache-Control: no-store',
  'Connection: close',
  '',
  text,
].join('\r\n');

/**
 * A TLS server that tells who comes to it with plain HTTP what to write, where it would hang up without a word. It looks at the
 * first byte alone; what is no TLS never reaches the station.
 */
export function tellingPlainCallers<S extends Server>(server: S): S {
  const listeners = server.listeners('connection');
  server.removeAllListeners('connection');
  server.on('connection', (socket: Socket) => {
    const hangUp = (): void => void socket.destroy();
    socket.once('error', hangUp);
    socket.setTimeout(silence, hangUp);
    socket.once('readable', () => {
      const first = socket.read(1) as Buffer | null;
      // the end came before a word
      if (first === null) return hangUp();
      socket.setTimeout(0);
      socket.off('timeout', hangUp);
      if (first[0] !== handshake) return tell(socket);
      socket.unshift(first);
      for (const listen of listeners) listen.call(server, socket);
    });
  });
  return server;
}

/** What the caller still sends is let go by, for a connection with unread bytes is cut before the answer is read. */
function tell(socket: Socket): void {
  socket.resume();
  socket.end(answer);
  setTimeout(() => socket.destroy(), parting).unref();
}
