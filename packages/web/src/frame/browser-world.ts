import type { SocketLike, StorageLike, World } from '../keeping/world.ts';

/** The browser as the keeping's world. */
export function browserWorld(window: Window & typeof globalThis): World {
  return {
    fetch: (input, init) => window.fetch(input, init),
    openSocket: (path) => {
      const { protocol, host } = window.location;
      const socket = new window.WebSocket(`${protocol === 'https:' ? 'wss' : 'ws'}://${host}${path}`);
      const like: SocketLike = { onmessage: null, onclose: null, close: () => socket.close() };
      socket.addEventListener('message', ({ data }) => like.onmessage?.({ data }));
      socket.addEventListener('close', ({ code }) => like.onclose?.({ code }));
      return like;
    },
    storage: storageOf(() => window.localStorage),
    session: storageOf(() => window.sessionStorage),
    newId: () => window.crypto.randomUUID(),
    clock: () => window.performance.now(),
    after: (delay, call) => {
      const timer = window.setTimeout(call, delay);
      return () => window.clearTimeout(timer);
    },
  };
}

/** A storage that the browser may forbid: then it holds nothing and takes nothing. */
function storageOf(open: () => Storage): StorageLike {
  return {
    getItem: (key) => attempt(() => open().getItem(key), null),
    setItem: (key, value) => open().setItem(key, value),
    removeItem: (key) => attempt(() => open().removeItem(key), undefined),
    keys: () => attempt(() => Object.keys(open()), []),
  };
}

function attempt<Result>(act: () => Result, otherwise: Result): Result {
  try {
    return act();
  } catch {
    return otherwise;
  }
}
