import { type KeptLaunch, type KeptPart, type KeptSettings, routes } from '@coreward/contract';
import { type Content, keyOf, type Thing, type Unkept } from './change.ts';
import { ask, NoAnswer, NotDone } from './client.ts';
import { withLaunch, withPart, withSettings } from './hearing.ts';
import type { KeepingState, Store } from './state.ts';
import { forget, remember } from './unkept-store.ts';
import type { World } from './world.ts';

export interface Sender {
  /** Remembers a write and sends it as soon as those before it are kept. */
  readonly add: (write: Unkept) => void;
  /** Sends what waits; called again whenever the station may answer. */
  readonly flush: () => void;
  /** Whether a write was made by this page. */
  readonly isOwn: (write: string) => boolean;
}

/** Refusals that may pass by themselves, such as a full disk. */
const passing: readonly string[] = ['not kept', 'too often', 'fault', 'unpaired'];
const retryAfter = 2_000;

/** Sends writes one by one, in their order, each with its own name until it is acknowledged. */
export function createSender(world: World, store: Store, lost: () => void): Sender {
  const own = new Set<string>();
  let busy = false;

  async function send(): Promise<void> {
    if (busy) return;
    busy = true;
    try {
      for (let next = store.get().unkept[0]; next !== undefined; next = store.get().unkept[0]) {
        if (!(await sendOne(next))) return;
      }
    } finally {
      busy = false;
    }
  }

  /** Whether the next one may follow. */
  async function sendOne(write: Unkept): Promise<boolean> {
    own.add(write.write);
    try {
      const kept = await put(world, write);
      settle(write, kept);
      return true;
    } catch (error) {
      if (error instanceof NotDone) return notDone(write, error);
      if (!(error instanceof NoAnswer)) throw error;
      lost();
      return false;
    }
  }

  function notDone(write: Unkept, { answer }: NotDone): boolean {
    if (passing.includes(answer.code)) {
      store.set(() => ({
        cannotKeep: answer.code === 'too often' ? null : answer.refused,
        ...(answer.code === 'unpaired' ? { connection: 'unpaired' as const } : {}),
      }));
      if (answer.code !== 'unpaired') world.after(retryAfter, () => void send());
      return false;
    }
    const key = keyOf(write.thing);
    const waiting = store.get().unkept.filter(({ thing }) => keyOf(thing) === key);
    const { content: mine, what } = waiting.at(-1) ?? write;
    for (const { write: id } of waiting) forget(world.storage, id);
    const { current } = answer;
    // a walk is never written here: what is answered with one is no clash of documents
    const theirs = current !== undefined && current !== null && 'acts' in current ? null : current;
    store.set((state) => ({
      unkept: state.unkept.filter(({ thing }) => keyOf(thing) !== key),
      ...(answer.code === 'stale'
        ? {
            clashes: [...state.clashes, { thing: write.thing, mine, what, theirs: theirs ?? null }],
            ...(theirs === undefined || theirs === null ? {} : heard(state, write.thing, theirs)),
          }
        : { unwanted: [...state.unwanted, { thing: write.thing, mine, what, refused: answer.refused }] }),
    }));
    return true;
  }

  function settle(write: Unkept, kept: KeptLaunch | KeptPart | KeptSettings): void {
    forget(world.storage, write.write);
    const key = keyOf(write.thing);
    store.set((state) => {
      const rest = state.unkept.filter((other) => other.write !== write.write);
      const follower = rest.findIndex((other) => keyOf(other.thing) === key && other.base === null);
      const unkept = rest.map((other, index) => {
        if (index !== follower) return other;
        const based = { ...other, base: kept.version };
        remember(world.storage, based);
        return based;
      });
      return { unkept, cannotKeep: null, ...heard(state, write.thing, kept) };
    });
  }

  return {
    add: (write) => {
      own.add(write.write);
      const remembered = remember(world.storage, write);
      store.set((state) => ({ unkept: [...state.unkept, write], remembered }));
      if (store.get().connection === 'joined') void send();
    },
    flush: () => void send(),
    isOwn: (write) => own.has(write),
  };
}

function heard(
  state: KeepingState,
  thing: Thing,
  kept: KeptLaunch | KeptPart | KeptSettings,
): Partial<KeepingState> {
  if ('settings' in kept) return withSettings(state, kept);
  return 'kind' in kept && thing.kind === 'part'
    ? withPart(state, kept)
    : withLaunch(state, kept as KeptLaunch);
}

async function put(world: World, write: Unkept): Promise<KeptLaunch | KeptPart | KeptSettings> {
  const { thing, content } = write;
  const keys = { write: write.write, base: write.base ?? 0 };
  switch (thing.kind) {
    case 'settings':
      return ask(world, routes.writeSettings, {}, { ...keys, settings: settingsOf(content) });
    case 'launch':
      return ask(world, routes.writeLaunch, { id: thing.id }, { ...keys, ...bodyOf(content) });
    case 'part':
      return ask(
        world,
        routes.writePart,
        { id: thing.id },
        { ...keys, kind: thing.part, ...bodyOf(content) },
      );
  }
}

function bodyOf(content: Content) {
  if (content.kind !== 'document') throw new TypeError('settings where a document belongs');
  return content.body;
}

function settingsOf(content: Content) {
  if (content.kind !== 'settings') throw new TypeError('a document where settings belong');
  return content.settings;
}
