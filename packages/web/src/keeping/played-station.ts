import { contractVersion, type KeptLaunch, type WriteLaunch } from '@coreward/contract';
import type { SocketLike, StorageLike, World } from './world.ts';

/** A station and a browser played in memory, for tests: launches only, with the rules of the contract. */
export interface PlayedStation {
  readonly world: World;
  readonly launches: Map<string, KeptLaunch[]>;
  /** `down`: no answer. `deaf`: does what it is asked, but the answer is lost. */
  mood: 'well' | 'down' | 'deaf' | 'full';
  /** Writes that arrived, sent again ones included. */
  readonly arrived: string[];
  /** Lets all timers that are due now run, then settles. */
  readonly pass: () => Promise<void>;
  /** A write from somewhere else. */
  readonly elsewhere: (id: string, text: string) => void;
  /** Cuts the live channel. */
  readonly cut: () => void;
}

const book = '00000000-0000-4000-8000-00000000b00c';

export function playedStorage(): StorageLike {
  const held = new Map<string, string>();
  return {
    getItem: (key) => held.get(key) ?? null,
    setItem: (key, value) => void held.set(key, value),
    removeItem: (key) => void held.delete(key),
    keys: () => [...held.keys()],
  };
}

export function playStation(storage = playedStorage(), session = playedStorage()): PlayedStation {
  const launches = new Map<string, KeptLaunch[]>();
  const applied = new Map<string, KeptLaunch>();
  const arrived: string[] = [];
  let timers: { readonly call: () => void }[] = [];
  let sockets: SocketLike[] = [];
  let ids = 0;
  let sequence = 0;

  const newest = (id: string): KeptLaunch | undefined => launches.get(id)?.at(-1);

  function keep(id: string, { write, text, putAway, invented }: Omit<WriteLaunch, 'base'>): KeptLaunch {
    const versions = launches.get(id) ?? [];
    const changed = '2026-11-25T10:00:00.000Z';
    const kept = { id, version: versions.length + 1, changed, name: 'a launch', putAway, invented, text };
    launches.set(id, [...versions, kept]);
    applied.set(write, kept);
    sequence += 1;
    for (const socket of sockets) {
      socket.onmessage?.({ data: JSON.stringify({ type: 'launch', sequence, write, launch: kept }) });
    }
    return kept;
  }

  function answer(
    path: string,
    body: WriteLaunch | null,
  ): { readonly status: number; readonly body: unknown } {
    if (path === '/api/status') {
      const facts = { coreward: 'station', contract: contractVersion, version: '0', book, sequence };
      return { status: 200, body: { ...facts, you: 'here', lan: false } };
    }
    if (path === '/api/launches') {
      const all = [...launches.values()].flatMap((versions) => versions.slice(-1));
      return { status: 200, body: { launches: all.map(({ text: _, ...summary }) => summary) } };
    }
    if (path === '/api/parts') return { status: 200, body: { parts: [] } };
    if (path === '/api/settings') {
      return {
        status: 200,
        body: { version: 0, changed: null, settings: { theme: 'dark', drawerPath: null } },
      };
    }
    const id = path.split('/')[3] ?? '';
    if (body === null) return { status: 200, body: newest(id) };
    arrived.push(body.write);
    const before = applied.get(body.write);
    if (before !== undefined) return { status: 200, body: before };
    const current = newest(id) ?? null;
    if ((current?.version ?? 0) !== body.base) {
      return { status: 409, body: { code: 'stale', refused: [], current } };
    }
    return { status: 200, body: keep(id, body) };
  }

  const station: PlayedStation = {
    launches,
    mood: 'well',
    arrived,
    elsewhere: (id, text) => {
      ids += 1;
      keep(id, {
        write: `ffffffff-0000-4000-8000-${`${ids}`.padStart(12, '0')}`,
        text,
        putAway: false,
        invented: false,
      });
    },
    cut: () => {
      const open = sockets;
      sockets = [];
      for (const socket of open) socket.onclose?.({ code: 1006 });
    },
    pass: async () => {
      for (let round = 0; round < 20; round += 1) await Promise.resolve();
      const due = timers;
      timers = [];
      for (const { call } of due) call();
      for (let round = 0; round < 60; round += 1) await new Promise((resolve) => setImmediate(resolve));
    },
    world: {
      storage,
      session,
      newId: () => {
        ids += 1;
        return `00000000-0000-4000-8000-${`${ids}`.padStart(12, '0')}`;
      },
      clock: () => 0,
      // only what retries: waiting for an answer or a beat has no end here
      after: (delay, call) => {
        if (delay > 4_000) return () => {};
        const timer = { call };
        timers.push(timer);
        return () => {
          timers = timers.filter((other) => other !== timer);
        };
      },
      openSocket: () => {
        const socket: SocketLike = { onmessage: null, onclose: null, close: () => {} };
        sockets.push(socket);
        const hello = { type: 'hello', contract: contractVersion, book, sequence, startOver: false };
        queueMicrotask(() => socket.onmessage?.({ data: JSON.stringify(hello) }));
        return socket;
      },
      fetch: async (path, init) => {
        if (station.mood === 'down') throw new TypeError('no connection');
        if (station.mood === 'full' && init.method === 'PUT') {
          const refused = [{ where: 'disk', what: 'the disk is full', mend: 'Make room.' }];
          return Response.json({ code: 'not kept', refused }, { status: 507 });
        }
        const { status, body } = answer(path, typeof init.body === 'string' ? JSON.parse(init.body) : null);
        if (station.mood === 'deaf' && init.method === 'PUT') throw new TypeError('the answer was lost');
        return Response.json(body, { status });
      },
    },
  };
  return station;
}
