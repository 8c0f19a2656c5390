import { Refusal } from '@coreward/bench';
import { contractVersion, idText, type RouteName, refusalCodes, routes } from '@coreward/contract';
import { type Context, Hono } from 'hono';
import type { Door } from '../access/door.ts';
import { mustComeFromUs, mustKnowHost } from '../access/gate.ts';
import { pagePolicy } from '../access/page-policy.ts';
import { RateLimit } from '../access/rate-limit.ts';
import { cookieFor, cookieIn, cookieName, secretHere, type Who, whoShows } from '../access/session.ts';
import { DiskTrouble } from '../bench-book/book-trouble.ts';
import { Declined } from '../declined.ts';
import { exportBook } from '../exchange/export-book.ts';
import { accessHandlers } from './access-handlers.ts';
import type { Call, Handlers } from './call.ts';
import { documentHandlers } from './document-handlers.ts';
import { entryHandlers } from './entry-handlers.ts';
import { instrumentHandlers } from './instrument-handlers.ts';
import { checked } from './malformed.ts';
import { bodyOf } from './read-body.ts';
import type { Rooms } from './rooms.ts';
import { declinedPage, markedPage, noScreens, type ScreenFile } from './screens.ts';
import { walkHandlers } from './walk-handlers.ts';

/** Set by whoever listens: where the other end of the connection is. */
export interface Connection {
  readonly address: string;
}

type App = { Bindings: Connection };

/** For people and their pages: far more than hands can ask for. */
const friends = { burst: 1000, perSecond: 200 };
/** For whoever is not let in: the pairing page's files, and some tries. */
const strangers = { burst: 120, perSecond: 5 };

/** Answers everything that is asked at one door, except the live channel. */
export function appFor(door: Door, hosts: () => readonly string[], rooms: Rooms): Hono<App> {
  const { book, screens } = rooms;
  const handlers: Handlers = {
    status: ({ who }) => ({
      coreward: 'station',
      contract: contractVersion,
      version: rooms.version,
      book: book.id,
      sequence: book.sequence,
      you: who.kind === 'paired' ? 'paired' : 'here',
      lan: rooms.network !== null,
    }),
    export: () => exportBook(book),
    ...documentHandlers(book),
    ...entryHandlers(book),
    ...instrumentHandlers(book, rooms.instruments),
    ...walkHandlers(book, rooms.benches, rooms.instruments),
    ...accessHandlers(rooms),
  };
  const limits = {
    friend: new RateLimit(friends, book.world.now),
    stranger: new RateLimit(strangers, book.world.now),
  };

  /** @throws {Declined} if whoever asks has asked too much */
  function comerOf(context: Context<App>): Who {
    const who = whoShows(cookieIn(context.req.header('cookie'), cookieName(door)), door, book);
    const name = who.kind === 'paired' ? who.device.id : who.kind === 'here' ? 'here' : context.env.address;
    if (!(who.kind === 'stranger' ? limits.stranger : limits.friend).allows(name)) throw tooOften();
    return who;
  }

  async function answer<Name extends RouteName>(name: Name, context: Context<App>): Promise<Response> {
    const { req } = context;
    const comer = {
      method: req.method,
      host: req.header('host') ?? null,
      origin: req.header('origin') ?? null,
      site: req.header('sec-fetch-site') ?? null,
    };
    mustComeFromUs(comer, door, hosts());
    const who = comerOf(context);
    if (who.kind === 'stranger' && name !== 'pair') throw unpaired(door);
    const { query, request } = routes[name];
    const parameters = req.param();
    if (parameters.id !== undefined) checked(idText, parameters.id, 'address');
    const call = {
      parameters,
      query: query === null ? null : checked(query, req.query(), 'query'),
      request: request === null ? null : checked(request, await bodyOf(req.raw), 'body'),
      who,
      door,
      giveCookie: (secret: string) => context.header('Set-Cookie', cookieFor(door, secret)),
    };
    // every part of the call was checked against the route of this very name
    const given = await handlers[name](call as unknown as Call<Name>);
    context.header('Cache-Control', 'no-store');
    return context.json(given);
  }

  function page(context: Context<App>): Response {
    const nonce = Buffer.from(book.world.randomBytes(16)).toString('base64url');
    for (const [key, value] of Object.entries(pagePolicy(nonce))) context.header(key, value);
    if (door.kind === 'here') context.header('Set-Cookie', cookieFor(door, secretHere(book)));
    context.header('Cache-Control', 'no-store');
    return context.html(screens.page === null ? noScreens : markedPage(screens.page, nonce));
  }

  const app = new Hono<App>();
  app.use(async (context, next) => {
    for (const [key, value] of Object.entries(pagePolicy(null))) context.header(key, value);
    await next();
  });
  for (const [name, { method, path }] of Object.entries(routes)) {
    app.on(method, path, (context) => answer(name as RouteName, context));
  }
  app.all('/api/*', () => {
    throw nothingThere();
  });
  app.on(['GET', 'HEAD'], '*', (context) => {
    mustKnowHost(context.req.header('host') ?? null, hosts());
    comerOf(context);
    const { path } = context.req;
    const file = screens.files.get(path);
    if (file !== undefined) return send(file, context);
    // an address of the app has no ending; a file that is not there is not there
    if (/\.\w+$/u.test(path) && path !== '/index.html') throw nothingThere();
    return page(context);
  });
  app.notFound(() => {
    throw nothingThere();
  });
  app.onError((error, context) => {
    const declined = declinedOf(error, rooms.fault);
    context.header('Cache-Control', 'no-store');
    const status = refusalCodes[declined.answer.code];
    // a browser says so when somebody opened the address; pages and programs get what they can read
    const isOpened =
      context.req.header('accept')?.includes('text/html') === true && !context.req.path.startsWith('/api/');
    return isOpened
      ? context.html(declinedPage(declined.answer.refused), status)
      : context.json(declined.answer, status);
  });
  return app;
}

function send({ type, bytes, zipped, tag, lasting }: ScreenFile, context: Context<App>): Response {
  context.header('ETag', tag);
  context.header('Vary', 'Accept-Encoding');
  context.header('Cache-Control', lasting ? 'public, max-age=31536000, immutable' : 'no-cache');
  if (context.req.header('if-none-match') === tag) return context.body(null, 304);
  context.header('Content-Type', type);
  const takesZipped = /\bgzip\b/u.test(context.req.header('accept-encoding') ?? '');
  if (zipped === null || !takesZipped) return context.body(new Uint8Array(bytes));
  context.header('Content-Encoding', 'gzip');
  return context.body(new Uint8Array(zipped));
}

/** What went wrong, as the page is told it. Of a fault of ours it learns nothing but that it is one. */
function declinedOf(error: unknown, fault: (error: unknown) => void): Declined {
  if (error instanceof Declined) return error;
  if (error instanceof DiskTrouble) return new Declined('not kept', error.parts);
  if (error instanceof Refusal) return new Declined('refused', error.parts);
  fault(error);
  return new Declined('fault', {
    where: 'station',
    what: 'this is a fault in Coreward, not in what you did; nothing was changed',
    mend: 'Try again; if it comes back, report it with what the station printed.',
  });
}

const unpaired = (door: Door): Declined =>
  new Declined('unpaired', {
    where: 'device',
    what: door.kind === 'here' ? 'this page is not known to the station' : 'this device is not paired',
    mend: door.kind === 'here' ? 'Reload the page.' : 'Pair it with a code from the station’s own computer.',
  });

const nothingThere = (): Declined =>
  new Declined('unknown', {
    where: 'address',
    what: 'there is nothing here',
    mend: 'Go back to the first page.',
  });

const tooOften = (): Declined =>
  new Declined('too often', {
    where: 'station',
    what: 'too much was asked for in too short a time',
    mend: 'Wait a minute and try again.',
  });
