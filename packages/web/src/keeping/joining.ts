import {
  beatInterval,
  contractVersion,
  type LiveMessage,
  liveClosed,
  liveMessage,
  livePath,
  type PassingMessage,
  routes,
} from '@coreward/contract';
import { keeperTexts } from '../texts/keeping.ts';
import { keyOf, type Thing } from './change.ts';
import { ask, NotDone } from './client.ts';
import { withLaunch, withLaunches, withPart, withParts, withSettings } from './hearing.ts';
import { without } from './history.ts';
import type { Sender } from './sending.ts';
import type { Store } from './state.ts';
import type { SocketLike, World } from './world.ts';

/** Pauses between tries to reach the station, ms; the last one is repeated. */
const pauses = [250, 500, 1_000, 2_000, 4_000];

export interface Joining {
  readonly join: () => void;
  /** The station did not answer. */
  readonly lost: () => void;
  /** Leaves the live channel for good. */
  readonly leave: () => void;
}

/**
 * Stays in step with the station: asks for everything once, then listens; when it is lost, tries again by itself.
 *
 * @param read hears of instruments and their readings, of which nothing is held here
 */
export function createJoining(
  world: World,
  store: Store,
  sender: () => Sender,
  read: (message: PassingMessage) => void,
): Joining {
  let socket: SocketLike | null = null;
  let tries = 0;
  let trying = false;
  let left = false;
  let cancelWatch = (): void => {};
  let cancelRetry = (): void => {};

  async function join(): Promise<void> {
    if (trying || left) return;
    trying = true;
    cancelRetry();
    try {
      const status = await ask(world, routes.status, {}, null);
      if (status.contract !== contractVersion) {
        store.set(() => ({ connection: 'outdated' }));
        return;
      }
      const isNew = status.book !== store.get().book || !store.get().loaded;
      if (isNew) await fetchAll();
      store.set((state) => ({
        book: status.book,
        you: status.you,
        lan: status.lan,
        sequence: isNew ? status.sequence : state.sequence,
      }));
      listen();
    } catch (error) {
      if (error instanceof NotDone && error.answer.code === 'unpaired') {
        store.set(() => ({ connection: 'unpaired' }));
      } else lost();
    } finally {
      trying = false;
    }
  }

  async function fetchAll(): Promise<void> {
    const [{ launches }, { parts }, settings] = await Promise.all([
      ask(world, routes.launches, {}, null),
      ask(world, routes.parts, {}, null),
      ask(world, routes.settings, {}, null),
    ]);
    store.set((state) => ({
      ...withLaunches(state, launches),
      ...withParts(state, parts),
      ...withSettings(state, settings),
      loaded: true,
    }));
  }

  function listen(): void {
    const { book, sequence } = store.get();
    const own = world.openSocket(`${livePath}?book=${book}&since=${sequence}`);
    socket = own;
    watch();
    own.onmessage = ({ data }) => {
      if (socket !== own) return;
      watch();
      const message = liveMessage.safeParse(parsed(data));
      if (message.success) hear(message.data);
    };
    own.onclose = ({ code }) => {
      if (socket !== own) return;
      socket = null;
      cancelWatch();
      if (code === liveClosed.unpaired) store.set(() => ({ connection: 'unpaired' }));
      else lost();
    };
  }

  /** A channel that is silent for longer than two beats is gone, whatever the browser believes. */
  function watch(): void {
    cancelWatch();
    cancelWatch = world.after(2 * beatInterval + 1_000, () => {
      drop();
      lost();
    });
  }

  function drop(): void {
    const own = socket;
    socket = null;
    cancelWatch();
    own?.close();
  }

  function lost(): void {
    drop();
    if (left) return;
    store.set(({ connection }) => (connection === 'unpaired' ? {} : { connection: 'lost' }));
    cancelRetry();
    cancelRetry = world.after(pauses[Math.min(tries, pauses.length - 1)] ?? 1_000, () => void join());
    tries += 1;
  }

  function hear(message: LiveMessage): void {
    if (message.type === 'hello') {
      tries = 0;
      if (message.contract !== contractVersion) {
        store.set(() => ({ connection: 'outdated' }));
        return;
      }
      store.set((state) => ({
        connection: 'joined',
        sequence: message.startOver ? message.sequence : state.sequence,
      }));
      if (message.startOver) void fetchAll().catch(lost);
      sender().flush();
      return;
    }
    if (message.type === 'beat') return;
    if (!('write' in message)) {
      read(message);
      return;
    }
    store.set((state) => {
      const base = { sequence: message.sequence };
      switch (message.type) {
        case 'launch':
          return { ...base, ...withLaunch(state, message.launch) };
        case 'part':
          return { ...base, ...withPart(state, message.part) };
        case 'settings':
          return { ...base, ...withSettings(state, message.settings) };
        case 'entry':
          return base;
      }
    });
    if (message.type !== 'entry' && !sender().isOwn(message.write)) tellOf(message);
  }

  /** Steps back over what somebody else has changed would undo their work, too. */
  function tellOf(message: Extract<LiveMessage, { type: 'launch' | 'part' | 'settings' }>): void {
    const thing: Thing =
      message.type === 'launch'
        ? { kind: 'launch', id: message.launch.id }
        : message.type === 'part'
          ? { kind: 'part', id: message.part.id, part: message.part.kind }
          : { kind: 'settings' };
    const name =
      message.type === 'launch' ? message.launch.name : message.type === 'part' ? message.part.name : null;
    store.set(({ history, unkept }) => ({
      history: without(history, thing),
      ...(name === null || unkept.some((write) => keyOf(write.thing) === keyOf(thing))
        ? {}
        : { news: keeperTexts.changedElsewhere(name) }),
    }));
  }

  return {
    join: () => void join(),
    lost,
    leave: () => {
      left = true;
      cancelRetry();
      drop();
    },
  };
}

function parsed(data: unknown): unknown {
  try {
    return JSON.parse(String(data));
  } catch {
    return null;
  }
}
