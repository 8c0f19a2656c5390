/** What reading came to. */
export type ReadOutcome =
  | { readonly kind: 'read'; readonly bytes: Uint8Array }
  | { readonly kind: 'missing' }
  | { readonly kind: 'folder' }
  | { readonly kind: 'forbidden' }
  /** Nothing was kept; `bytes` is the size where it could be known beforehand. */
  | { readonly kind: 'too long'; readonly bytes: number | null }
  | { readonly kind: 'failed'; readonly reason: string };

/** What creating a file came to. */
export type CreateOutcome =
  | { readonly kind: 'created' }
  | { readonly kind: 'exists' }
  | { readonly kind: 'forbidden' }
  /** A file stands where a folder of the path should. */
  | { readonly kind: 'no folder' }
  | { readonly kind: 'full' }
  | { readonly kind: 'failed'; readonly reason: string };

/** What only a station and its bench book need of the machine. */
export interface Machine {
  readonly now: () => Date;
  /** From a source fit for secrets. */
  readonly randomBytes: (count: number) => Uint8Array;
  readonly platform: NodeJS.Platform;
  /** The user's own folder. */
  readonly home: string;
  readonly env: { readonly [name: string]: string | undefined };
  /** The folder of the built screens. */
  readonly screens: string;
  /** Shows an address in the browser, if there is one; whether it was tried. */
  readonly openPage: (address: string) => Promise<boolean>;
  /** Calls back whenever Enter is typed; returns how to stop it. */
  readonly onEnter: (listener: () => void) => () => void;
  /** Resolves when the station is asked to stop: Ctrl-C, or the end of the session. */
  readonly untilStopped: () => Promise<void>;
}

/** The whole outside world of a command: made by `main`, faked by tests. */
export interface Shell {
  /** What to type to get here again: `coreward`, or `npx coreward` in a checkout. */
  readonly typed: string;
  /** A file, but never more than `most` bytes of it: a longer one is refused unread. */
  readonly read: (path: string, most: number) => Promise<ReadOutcome>;
  /** Standard input to its end, within the same limit. */
  readonly readInput: (most: number) => Promise<ReadOutcome>;
  /** Standard input line by line, as the lines come. */
  readonly lines: () => AsyncIterable<string>;
  /** What a device, a pipe or a file says, as it comes, cut anywhere; it ends when that does, and throws as Node does. */
  readonly listen: (path: string) => AsyncIterable<string>;
  /** Whether standard input is a keyboard. */
  readonly inputIsKeyboard: boolean;
  /** Whether anything stands at a path. */
  readonly isTaken: (path: string) => Promise<boolean>;
  /** A new file, with the folders it needs; never over an existing one. */
  readonly create: (path: string, text: string) => Promise<CreateOutcome>;
  /** More at the end of a file, on the disk when it resolves; why it could not be, or null. */
  readonly append: (path: string, text: string) => Promise<string | null>;
  /** Results: standard output. */
  readonly print: (text: string) => void;
  /** Talk about the work: standard error. */
  readonly talk: (text: string) => void;
  /** Milliseconds from some fixed moment; never runs back. */
  readonly clock: () => number;
  /** Columns there are for text. */
  readonly width: number;
  /** Whether headings may be set in bold. */
  readonly bold: boolean;
  /** Whether a fault of ours is to be told with all its detail (`COREWARD_DEBUG=1`). */
  readonly debug: boolean;
  readonly machine: Machine;
}
