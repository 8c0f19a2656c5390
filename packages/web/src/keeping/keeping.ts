import {
  type PartKind,
  type PassingMessage,
  routes,
  type Settings,
  settingsAtFirst,
} from '@coreward/contract';
import {
  type Body,
  type Change,
  type Content,
  contentOfText,
  keyOf,
  sameContent,
  type Thing,
  undone,
} from './change.ts';
import { ask } from './client.ts';
import { withLaunch } from './hearing.ts';
import { type History, noHistory, stepBack, stepForward, withChange } from './history.ts';
import { createJoining } from './joining.ts';
import { createSender } from './sending.ts';
import { type Clash, contentOf, createStore, heldOf, type KeepingState, type Unwanted } from './state.ts';
import { rememberedWrites } from './unkept-store.ts';
import type { World } from './world.ts';

/** What is kept in the bench book, as this page sees it, and all that can be done to it. */
export interface Keeping {
  readonly world: World;
  readonly get: () => KeepingState;
  readonly subscribe: (listener: () => void) => () => void;
  /** Hears what the live channel tells of instruments, until the answer is called. */
  readonly hearPassing: (listener: (message: PassingMessage) => void) => () => void;
  /** Begins to follow the station. */
  readonly join: () => void;
  readonly leave: () => void;
  /** Changes a document; shown at once, kept as soon as the station has it. */
  readonly change: (
    thing: Exclude<Thing, { kind: 'settings' }>,
    body: Body,
    what: string,
    where: string,
  ) => void;
  /** Only what is named changes: the rest stays what it is by then. */
  readonly changeSettings: (changes: Partial<Settings>, what: string, where: string) => void;
  /** Makes a new launch and returns its id. */
  readonly newLaunch: (body: Body, what: string, where: string) => string;
  readonly newPart: (part: PartKind, body: Body, what: string, where: string) => string;
  /** Undoes the last change and returns it, `null` if there is none. */
  readonly undo: () => Change | null;
  readonly redo: () => Change | null;
  /** Asks for a launch's text if it is not there yet. */
  readonly needLaunch: (id: string) => Promise<void>;
  /** A launch's text as this page has it, asked for where it must be; null: it cannot be had. */
  readonly textOfLaunch: (id: string) => Promise<string | null>;
  readonly settleClash: (clash: Clash, how: 'mine' | 'theirs' | 'both', where: string) => void;
  readonly setAside: (unwanted: Unwanted) => void;
  readonly readNews: () => void;
}

const historyKey = 'coreward.history';

export function createKeeping(world: World): Keeping {
  const store = createStore();
  const listeners = new Set<(message: PassingMessage) => void>();
  const joining = createJoining(
    world,
    store,
    () => sender,
    (message) => {
      for (const listener of listeners) listener(message);
    },
  );
  const sender = createSender(world, store, () => joining.lost());
  const unkept = rememberedWrites(world.storage);
  let order = unkept.at(-1)?.order ?? 0;
  store.set(() => ({ unkept, history: rememberedHistory(world) }));

  function write(thing: Thing, content: Content, what: string): void {
    const state = store.get();
    const key = keyOf(thing);
    const follows = state.unkept.some((other) => keyOf(other.thing) === key);
    order += 1;
    sender.add({
      write: world.newId(),
      thing,
      content,
      what,
      base: follows ? null : (heldOf(state, thing)?.version ?? 0),
      order,
    });
  }

  function setHistory(history: History): void {
    store.set(() => ({ history }));
    try {
      world.session.setItem(historyKey, JSON.stringify(history));
    } catch {
      // undo then lasts until the page is loaded again
    }
  }

  function apply(change: Change): void {
    if (sameContent(change.before, change.after)) return;
    setHistory(withChange(store.get().history, change));
    write(change.thing, change.after, change.what);
  }

  function changeTo(thing: Thing, after: Content, what: string, where: string): void {
    apply({ thing, before: contentOf(store.get(), thing), after, what, where });
  }

  function made(
    thing: Exclude<Thing, { kind: 'settings' }>,
    body: Body,
    what: string,
    where: string,
  ): string {
    apply({ thing, before: null, after: { kind: 'document', body }, what, where });
    return thing.id;
  }

  function walk(change: Change | undefined, to: (change: Change) => Content, next: History): Change | null {
    if (change === undefined) return null;
    setHistory(next);
    write(change.thing, to(change), change.what);
    return change;
  }

  async function needLaunch(id: string): Promise<void> {
    const held = store.get().launches.get(id);
    if (held === undefined || held.text !== null) return;
    const launch = await ask(world, routes.launch, { id }, null);
    store.set((state) => withLaunch(state, launch));
  }

  const withoutClash = (clash: Clash): void =>
    store.set(({ clashes }) => ({ clashes: clashes.filter((other) => other !== clash) }));

  return {
    world,
    get: store.get,
    subscribe: store.subscribe,
    hearPassing: (listener) => {
      listeners.add(listener);
      return () => listeners.delete(listener);
    },
    join: joining.join,
    leave: joining.leave,
    change: (thing, body, what, where) => changeTo(thing, { kind: 'document', body }, what, where),
    changeSettings: (changes, what, where) => {
      const now = contentOf(store.get(), { kind: 'settings' });
      const before = now?.kind === 'settings' ? now.settings : settingsAtFirst;
      changeTo({ kind: 'settings' }, { kind: 'settings', settings: { ...before, ...changes } }, what, where);
    },
    newLaunch: (body, what, where) => made({ kind: 'launch', id: world.newId() }, body, what, where),
    newPart: (part, body, what, where) => made({ kind: 'part', id: world.newId(), part }, body, what, where),
    undo: () => {
      const { history } = store.get();
      return walk(history.done.at(-1), undone, stepBack(history));
    },
    redo: () => {
      const { history } = store.get();
      return walk(history.undone.at(-1), ({ after }) => after, stepForward(history));
    },
    needLaunch,
    textOfLaunch: async (id) => {
      await needLaunch(id).catch(() => {});
      return contentOfText(contentOf(store.get(), { kind: 'launch', id }));
    },
    settleClash: (clash, how, where) => {
      withoutClash(clash);
      const { thing, mine, what } = clash;
      const theirs = heldOf(store.get(), thing)?.content ?? null;
      if (how === 'mine') apply({ thing, before: theirs, after: mine, what, where });
      if (how === 'both' && mine.kind === 'document' && thing.kind === 'launch') {
        made({ kind: 'launch', id: world.newId() }, mine.body, what, where);
      }
      // what was given up can still be had: undoing brings it back
      if (how === 'theirs' && theirs !== null) {
        setHistory(withChange(store.get().history, { thing, before: mine, after: theirs, what, where }));
      }
    },
    setAside: (unwanted) =>
      store.set((state) => ({ unwanted: state.unwanted.filter((other) => other !== unwanted) })),
    readNews: () => store.set(() => ({ news: null })),
  };
}

function rememberedHistory({ session }: World): History {
  try {
    const found: unknown = JSON.parse(session.getItem(historyKey) ?? 'null');
    const isHistory = typeof found === 'object' && found !== null && 'done' in found && 'undone' in found;
    return isHistory ? (found as History) : noHistory;
  } catch {
    return noHistory;
  }
}
