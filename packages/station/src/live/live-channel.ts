import type { IncomingMessage } from 'node:http';
import type { Duplex } from 'node:stream';
import { beatInterval, contractVersion, type LiveMessage, liveClosed, livePath } from '@coreward/contract';
import { type WebSocket, WebSocketServer } from 'ws';
import type { Door } from '../access/door.ts';
import { mustComeFromUs } from '../access/gate.ts';
import { cookieIn, cookieName, whoShows } from '../access/session.ts';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { Declined } from '../declined.ts';
import { messageOf } from '../serve/answers.ts';

/** A page that comes back is told so many changes; one that missed more begins anew. */
const mostMissed = 500;
/** Pages at once; a browser with more than this open is a mistake or an attack. */
const mostPages = 64;
/** Bytes that may wait for a page that does not listen. */
const mostWaiting = 16 * 1024 * 1024;

interface Listener {
  readonly socket: WebSocket;
  readonly door: Door;
  readonly cookie: string | null;
}

/** Tells every open page of every change, and each that the station is alive. Pages only listen. */
export class LiveChannel {
  readonly #book: BenchBook;
  readonly #sockets = new WebSocketServer({
    noServer: true,
    clientTracking: false,
    maxPayload: 1024,
    perMessageDeflate: false,
  });
  readonly #listeners = new Set<Listener>();
  readonly #stop: () => void;
  readonly #beat: NodeJS.Timeout;

  /** @param every how often the station is heard, ms */
  constructor(book: BenchBook, every = beatInterval) {
    this.#book = book;
    this.#stop = book.onChange((change) => this.#tellAll(messageOf(change)));
    this.#beat = setInterval(() => this.beat(), every);
  }

  /** Takes on a page that asks to be told, or turns it away. */
  welcome(
    door: Door,
    hosts: readonly string[],
    request: IncomingMessage,
    socket: Duplex,
    head: Buffer,
  ): void {
    // a connection that breaks while it is being looked at is nobody's fault
    socket.on('error', () => socket.destroy());
    // not `URL`, which throws at some of what can be sent here
    const [path = '', query = ''] = (request.url ?? '').split('?', 2);
    const cookie = cookieIn(request.headers.cookie, cookieName(door));
    const refused = this.#refusalOf(path, request, cookie, door, hosts);
    if (refused !== null) {
      socket.end(`HTTP/1.1 ${refused}\r\nConnection: close\r\nContent-Length: 0\r\n\r\n`);
      return;
    }
    this.#sockets.handleUpgrade(request, socket, head, (opened) =>
      this.#listen({ socket: opened, door, cookie }, new URLSearchParams(query)),
    );
  }

  /** Tells every page that the station is there, and lets go of those that may no longer listen. */
  beat(): void {
    for (const listener of this.#listeners) {
      if (!this.#knows(listener.cookie, listener.door))
        listener.socket.close(liveClosed.unpaired, 'unpaired');
    }
    this.#tellAll({ type: 'beat', sequence: this.#book.sequence });
  }

  /** Tells every page what is no change of the bench book. */
  tell(message: LiveMessage): void {
    this.#tellAll(message);
  }

  close(): void {
    clearInterval(this.#beat);
    this.#stop();
    for (const { socket } of this.#listeners) {
      socket.close(1001, 'the station stops');
      setTimeout(() => socket.terminate(), 500).unref();
    }
    this.#sockets.close();
  }

  /** Why a page is turned away, as an HTTP status; null if it is not. */
  #refusalOf(
    path: string,
    { headers }: IncomingMessage,
    cookie: string | null,
    door: Door,
    hosts: readonly string[],
  ): string | null {
    if (path !== livePath) return '404 Not Found';
    const { host = null, origin = null, 'sec-fetch-site': site = null } = headers;
    try {
      // a browser names the origin of every WebSocket; POST is what makes the gate insist on it
      mustComeFromUs({ method: 'POST', host, origin, site: one(site) }, door, hosts);
    } catch (error) {
      if (error instanceof Declined) return '403 Forbidden';
      throw error;
    }
    if (!this.#knows(cookie, door)) return '401 Unauthorized';
    return this.#listeners.size >= mostPages ? '503 Service Unavailable' : null;
  }

  #knows(cookie: string | null, door: Door): boolean {
    return whoShows(cookie, door, this.#book).kind !== 'stranger';
  }

  #listen(listener: Listener, asked: URLSearchParams): void {
    const { socket } = listener;
    const sequence = this.#book.sequence;
    const since = sinceOf(asked, this.#book.id, sequence);
    const missed = since === null ? [] : this.#book.changesSince(since, mostMissed + 1);
    const startOver = asked.has('since') && (since === null || missed.length > mostMissed);
    const hello = {
      type: 'hello',
      contract: contractVersion,
      book: this.#book.id,
      sequence,
      startOver,
    } as const;
    tell(listener, hello);
    if (!startOver) for (const change of missed) tell(listener, messageOf(change));
    socket.on('message', () => socket.close(liveClosed.spoken, 'a page only listens'));
    socket.on('error', () => socket.terminate());
    socket.on('close', () => this.#listeners.delete(listener));
    this.#listeners.add(listener);
  }

  #tellAll(message: LiveMessage): void {
    for (const listener of this.#listeners) tell(listener, message);
  }
}

/** The change behind which a page goes on; null if it means another book, or a change that has not happened. */
function sinceOf(asked: URLSearchParams, book: string, sequence: number): number | null {
  const since = asked.get('since') ?? '';
  if (!/^\d{1,15}$/u.test(since) || asked.get('book') !== book) return null;
  return Number(since) <= sequence ? Number(since) : null;
}

function tell({ socket }: Listener, message: LiveMessage): void {
  if (socket.readyState !== socket.OPEN) return;
  if (socket.bufferedAmount > mostWaiting) socket.close(liveClosed.slow, 'too slow');
  else socket.send(JSON.stringify(message));
}

const one = (header: string | readonly string[] | null): string | null =>
  typeof header === 'string' || header === null ? header : (header[0] ?? null);
