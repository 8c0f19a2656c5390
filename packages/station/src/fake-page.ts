import { request } from 'node:http';
import { request as requestTls } from 'node:https';
import { join } from 'node:path';
import { type LiveMessage, liveMessage, livePath, type RefusedAnswer } from '@coreward/contract';
import WebSocket from 'ws';
import { type FakeWorld, fakeWorld, inFolder } from './fake-world.ts';
import { type Station, startStation } from './station.ts';

/** What came back. */
export interface Reply {
  readonly status: number;
  readonly headers: Readonly<Record<string, string | readonly string[] | undefined>>;
  readonly text: string;
  // biome-ignore lint/suspicious/noExplicitAny: tests look into answers of every kind
  readonly json: any;
}

/** What a test sends. */
export interface Asking {
  readonly method?: string;
  readonly headers?: Readonly<Record<string, string>>;
  /** Sent as JSON. */
  readonly body?: unknown;
  /** Sent as it is. */
  readonly raw?: string | Buffer;
}

/** Asks as a program would, with every header in its own hand: a browser's `fetch` would mend what a test breaks. */
export function ask(
  address: string,
  { method = 'GET', headers = {}, body, raw }: Asking = {},
): Promise<Reply> {
  const url = new URL(address);
  const send = url.protocol === 'https:' ? requestTls : request;
  const sent = raw ?? (body === undefined ? undefined : JSON.stringify(body));
  const isChunked = headers['transfer-encoding'] !== undefined;
  const all = {
    ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    ...(sent === undefined || isChunked ? {} : { 'content-length': `${Buffer.byteLength(sent)}` }),
    ...headers,
  };
  return new Promise((resolve, reject) => {
    // the address as it is written: `URL` would take the dots out of it
    const path = address.slice(url.origin.length);
    const options = {
      host: url.hostname,
      port: url.port,
      path,
      method,
      headers: all,
      rejectUnauthorized: false,
      agent: false,
    };
    const asking = send(options, (response) => {
      const chunks: Buffer[] = [];
      response.on('data', (chunk: Buffer) => chunks.push(chunk));
      response.on('end', () => {
        const text = Buffer.concat(chunks).toString('utf8');
        resolve({ status: response.statusCode ?? 0, headers: response.headers, text, json: jsonOf(text) });
      });
    });
    asking.on('error', reject);
    asking.end(sent);
  });
}

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** What an answer refuses. */
export const refusalIn = (reply: Reply): RefusedAnswer => reply.json;

/** One page of the station's own, known to it by its cookie. */
export interface Page {
  readonly address: string;
  readonly cookie: string;
  readonly ask: (path: string, asking?: Asking) => Promise<Reply>;
  readonly listen: (query?: string) => Promise<LivePage>;
}

/** A page on the live channel. */
export interface LivePage {
  readonly socket: WebSocket;
  /** The next message that is not a beat. */
  readonly next: () => Promise<LiveMessage>;
  readonly closed: Promise<number>;
}

/** Opens the first page, as a browser on the station's own computer does. */
export async function openPage({ address }: Pick<Station, 'address'>): Promise<Page> {
  const first = await ask(address);
  const [cookie = ''] = first.headers['set-cookie'] ?? [];
  return pageWith(address, cookie.split(';', 1)[0] ?? '');
}

/** A page with a cookie it has from before. */
export function pageWith(address: string, cookie: string): Page {
  const { host, origin } = new URL(address);
  const headers = { host, origin, cookie, 'sec-fetch-site': 'same-origin' };
  return {
    address,
    cookie,
    ask: (path, asking = {}) =>
      ask(`${origin}${path}`, { ...asking, headers: { ...headers, ...asking.headers } }),
    listen: (query = '') => listenTo(`${origin.replace(/^http/u, 'ws')}${livePath}${query}`, headers),
  };
}

/** Opens the live channel; rejects with the HTTP status if it is refused. */
export function listenTo(address: string, headers: Readonly<Record<string, string>>): Promise<LivePage> {
  const socket = new WebSocket(address, { headers, rejectUnauthorized: false });
  const heard: LiveMessage[] = [];
  let waiting: ((message: LiveMessage) => void) | null = null;
  socket.on('message', (data) => {
    const message = liveMessage.parse(JSON.parse(String(data)));
    if (message.type === 'beat') return;
    if (waiting === null) heard.push(message);
    else waiting(message);
    waiting = null;
  });
  const closed = new Promise<number>((resolve) => socket.on('close', resolve));
  const next = (): Promise<LiveMessage> => {
    const first = heard.shift();
    return first === undefined ? new Promise((resolve) => (waiting = resolve)) : Promise.resolve(first);
  };
  return new Promise((resolve, reject) => {
    socket.on('open', () => resolve({ socket, next, closed }));
    socket.on('unexpected-response', (_, response) => reject(new Error(`${response.statusCode}`)));
    socket.on('error', reject);
  });
}

/** A station for one test, and the world it lives in. */
export interface RunningStation {
  readonly station: Station;
  readonly world: FakeWorld;
  readonly folder: string;
  readonly faults: readonly unknown[];
  /** Stops it and starts it again on the same folder and port. */
  readonly restart: () => Promise<Station>;
}

/** A station on ports of its own and a folder that is gone afterwards. */
export function withStation(
  work: (running: RunningStation) => Promise<void>,
  {
    lan = false,
    screens = '/nowhere',
    before = () => {},
    beat,
  }: {
    readonly lan?: boolean;
    readonly screens?: string;
    /** Is done in the data folder before the first start. */
    readonly before?: (folder: string, world: FakeWorld) => void;
    readonly beat?: number;
  } = {},
): Promise<void> {
  return inFolder(async (folder) => {
    const world = fakeWorld();
    const faults: unknown[] = [];
    before(join(folder, 'data'), world);
    const options = {
      world,
      folder: join(folder, 'data'),
      screens,
      lan,
      version: '0',
      ...(beat === undefined ? {} : { beat }),
      fault: (error: unknown) => faults.push(error),
    };
    const station = await startStation({ ...options, port: 0 });
    const running = { station };
    const restart = async () => {
      await running.station.stop();
      running.station = await startStation({ ...options, port: Number(new URL(station.address).port) });
      return running.station;
    };
    try {
      await work({ station, world, folder: options.folder, faults, restart });
    } finally {
      await running.station.stop();
    }
  });
}
