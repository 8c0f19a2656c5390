import { get } from 'node:http';
import { dirname } from 'node:path';
import { Refusal } from '@coreward/bench';
import {
  type AnswerOf,
  addressOf,
  type LiveMessage,
  liveMessage,
  livePath,
  type ParametersOf,
  type Route,
} from '@coreward/contract';
import { WebSocket } from 'ws';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { stationAddress } from '../bench-book/folder-lock.ts';
import type { Door } from './door.ts';
import { cookieName, secretHere } from './session.ts';

/** The station that has a bench book open, seen by another program of the same user, who may read the book and so knows its key. */
export interface StationBeside {
  readonly address: string;
  /** Asks one of the questions that change nothing. */
  readonly ask: <R extends Route & { readonly method: 'GET' }>(
    route: R,
    parameters: ParametersOf<R>,
  ) => Promise<AnswerOf<R>>;
  /** Hears the live channel until it ends, or until it is left. */
  readonly listen: (heard: (message: LiveMessage) => void) => Listening;
}

/** A live channel that is being listened to. */
export interface Listening {
  /** When the channel has ended, whoever ended it. */
  readonly ended: Promise<void>;
  readonly leave: () => void;
}

/** Null if no station has the book open, or if it has only just begun and not said where it is. */
export function stationBeside(book: BenchBook): StationBeside | null {
  // whoever holds the folder is no other
  const address = book.lock === null ? stationAddress(dirname(book.file)) : null;
  if (address === null) return null;
  const { host, origin, port } = new URL(address);
  const door: Door = { kind: 'here', port: Number(port) };
  const headers = { Cookie: `${cookieName(door)}=${secretHere(book)}` };
  return {
    address,
    async ask(route, parameters) {
      const text = await body(`${origin}${addressOf(route, parameters)}`, headers, address);
      return route.answer.parse(JSON.parse(text)) as AnswerOf<typeof route>;
    },
    listen(heard) {
      const socket = new WebSocket(`ws://${host}${livePath}`, { headers, origin });
      socket.on('message', (data) => heard(liveMessage.parse(JSON.parse(String(data)))));
      const ended = new Promise<void>((resolve) => {
        socket.on('close', () => resolve());
        // it closes thereafter
        socket.on('error', () => {});
      });
      return { ended, leave: () => socket.close() };
    },
  };
}

/** @throws {Refusal} if there is no answer */
function body(url: string, headers: { readonly Cookie: string }, address: string): Promise<string> {
  return new Promise((resolve, reject) => {
    const refuse = (): void =>
      reject(
        new Refusal({
          where: address,
          what: 'the station that has this bench book open does not answer',
          mend: 'Stop it with Ctrl-C, start it again, and repeat this.',
        }),
      );
    get(url, { headers, timeout: 10_000, agent: false }, (answer) => {
      let text = '';
      answer.setEncoding('utf8');
      answer.on('data', (piece: string) => {
        text += piece;
      });
      answer.on('end', () => (answer.statusCode === 200 ? resolve(text) : refuse()));
      answer.on('error', refuse);
    })
      .on('timeout', refuse)
      .on('error', refuse);
  });
}
