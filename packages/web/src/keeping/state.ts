import type { RefusalParts } from '@coreward/bench';
import type { KeptLaunch, KeptPart, KeptSettings, LaunchSummary } from '@coreward/contract';
import { settingsAtFirst } from '@coreward/contract';
import { type Content, keyOf, settingsContent, type Thing, type Unkept } from './change.ts';
import { type History, noHistory } from './history.ts';

/** A launch as the bench book holds it; its text only once it was asked for. */
export type HeldLaunch = LaunchSummary & { readonly text: string | null };

/** Two versions of one thing, made apart. Nothing of either is given up until someone chooses. */
export interface Clash {
  readonly thing: Thing;
  readonly mine: Content;
  readonly what: string;
  /** What the bench book holds; `null`: nothing by that name. */
  readonly theirs: KeptLaunch | KeptPart | KeptSettings | null;
}

/** A write that the station will not take, with what it says; what was written stays on the page. */
export interface Unwanted {
  readonly thing: Thing;
  readonly mine: Content;
  readonly what: string;
  readonly refused: readonly RefusalParts[];
}

/** How the page stands with the station. */
export type Connection =
  | 'joining'
  | 'joined'
  /** No answer; tried again all the time. */
  | 'lost'
  /** This device is not let in, or no longer. */
  | 'unpaired'
  /** The station speaks another version of the contract: the page must be loaded anew. */
  | 'outdated';

export interface KeepingState {
  readonly connection: Connection;
  /** Whether everything below was heard from the station at least once. */
  readonly loaded: boolean;
  readonly book: string | null;
  /** The station's own computer, or a paired device. */
  readonly you: 'here' | 'paired' | null;
  readonly lan: boolean;
  readonly sequence: number;
  readonly launches: ReadonlyMap<string, HeldLaunch>;
  readonly parts: ReadonlyMap<string, KeptPart>;
  readonly settings: KeptSettings;
  readonly unkept: readonly Unkept[];
  /** Why the station cannot keep anything at the moment, in its words; `null`: it can. */
  readonly cannotKeep: readonly RefusalParts[] | null;
  /** Whether the browser remembers what is not kept yet. */
  readonly remembered: boolean;
  readonly clashes: readonly Clash[];
  readonly unwanted: readonly Unwanted[];
  readonly history: History;
  /** What another page has just done, in words for everybody. */
  readonly news: string | null;
}

export const stateAtFirst: KeepingState = {
  connection: 'joining',
  loaded: false,
  book: null,
  you: null,
  lan: false,
  sequence: 0,
  launches: new Map(),
  parts: new Map(),
  settings: { version: 0, changed: null, settings: settingsAtFirst },
  unkept: [],
  cannotKeep: null,
  remembered: true,
  clashes: [],
  unwanted: [],
  history: noHistory,
  news: null,
};

/** What the bench book holds of a thing, with its version; `null`: nothing that is known here. */
export function heldOf(
  state: KeepingState,
  thing: Thing,
): { readonly version: number; readonly content: Content } | null {
  if (thing.kind === 'settings') {
    return { version: state.settings.version, content: settingsContent(state.settings) };
  }
  const held = thing.kind === 'launch' ? state.launches.get(thing.id) : state.parts.get(thing.id);
  if (held === undefined || held.text === null) return null;
  const { text, putAway, invented, version } = held;
  return { version, content: { kind: 'document', body: { text, putAway, invented } } };
}

/** A thing as this page has it: with what is not kept yet. */
export function contentOf(state: KeepingState, thing: Thing): Content | null {
  const key = keyOf(thing);
  const own = (other: { readonly thing: Thing }): boolean => keyOf(other.thing) === key;
  return (
    state.unkept.findLast(own)?.content ??
    state.clashes.find(own)?.mine ??
    state.unwanted.find(own)?.mine ??
    heldOf(state, thing)?.content ??
    null
  );
}

/** The state, and who wants to know of it. */
export interface Store {
  readonly get: () => KeepingState;
  readonly set: (next: (state: KeepingState) => Partial<KeepingState>) => void;
  readonly subscribe: (listener: () => void) => () => void;
}

export function createStore(): Store {
  let state = stateAtFirst;
  const listeners = new Set<() => void>();
  return {
    get: () => state,
    set: (next) => {
      state = { ...state, ...next(state) };
      for (const listener of listeners) listener();
    },
    subscribe: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
  };
}
