/** The outside world as the keeping sees it; handed in by `main`, played by tests. */
export interface World {
  readonly fetch: (input: string, init: RequestInit) => Promise<Response>;
  /** Opens the live channel at a path of the station. */
  readonly openSocket: (path: string) => SocketLike;
  /** Outlives the page and the browser. */
  readonly storage: StorageLike;
  /** Outlives a reload. */
  readonly session: StorageLike;
  /** A new id: a random UUID. */
  readonly newId: () => string;
  /** ms since whenever; it never goes back. */
  readonly clock: () => number;
  /** Calls back after so many ms, unless cancelled. */
  readonly after: (delay: number, call: () => void) => () => void;
}

export interface StorageLike {
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
  readonly removeItem: (key: string) => void;
  readonly keys: () => readonly string[];
}

/** What the keeping uses of a WebSocket. */
export interface SocketLike {
  onmessage: ((event: { readonly data: unknown }) => void) | null;
  onclose: ((event: { readonly code: number }) => void) | null;
  readonly close: () => void;
}
