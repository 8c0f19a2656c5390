import type { Screw, WalkAct } from '@coreward/bench';
import { type BeginWalk, type ChooseReads, type KeptWalk, routes, type WalkStands } from '@coreward/contract';
import { useCallback, useEffect, useRef, useState } from 'react';
import { ask, NotDone } from '../keeping/client.ts';
import { useKeeping, useKept } from '../keeping/use-keeping.ts';
import { walkTexts } from '../texts/walk.ts';

/** The walk of a launch as the station has it, and what can be done in it. */
export interface WalkHeld {
  /** Null: nothing is known yet. */
  readonly stands: WalkStands | 'failed' | null;
  /** What went wrong with the last thing that was done; null: nothing. */
  readonly said: string | null;
  readonly busy: boolean;
  /** Whether this page did the last act of the walk. */
  readonly leads: boolean;
  /** The simulated bench; null: a real one is walked, or nothing is known. */
  readonly practice: WalkStands['practice'];
  readonly begin: (how: Omit<BeginWalk, 'write'>) => void;
  /** @param quietly nobody pressed: that another page was first is no news */
  readonly act: (act: Exclude<WalkAct, { do: 'reads' }>, quietly?: boolean) => void;
  /** Chooses what reads the light; with the same as before the step is listened to anew. */
  readonly reads: (how: Omit<ChooseReads, 'write' | 'after'>) => void;
  readonly block: (blocked: boolean) => void;
  readonly hand: () => void;
  readonly turn: (screw: Screw, turns: number) => void;
}

/** How far a walk has come. */
const stateOf = (walk: KeptWalk | null): string | null =>
  walk === null ? null : `${walk.id} ${walk.acts.length}`;

function withPractice(
  stands: WalkHeld['stands'],
  news: Partial<NonNullable<WalkStands['practice']>>,
): WalkHeld['stands'] {
  return stands === null || stands === 'failed' || stands.practice === null
    ? stands
    : { ...stands, practice: { ...stands.practice, ...news } };
}

/** How often something was done here, or heard of, that an answer on its way may not know of. */
export interface Since {
  /** Acts of this page, of which one may have begun another walk. */
  readonly acted: number;
  readonly blocked: number;
  readonly turned: number;
}

const oneMore = (since: Since, what: keyof Since): Since => ({ ...since, [what]: since[what] + 1 });

/**
 * What was asked for, held against what is known: its answer may have been on its way while an act of this page was kept.
 *
 * @param asked what had been done when it was asked for
 * @param now what has been done by now
 */
export function newerStands(
  before: WalkHeld['stands'],
  found: WalkStands,
  asked: Since,
  now: Since,
): WalkHeld['stands'] {
  const known = before === null || before === 'failed' ? null : before;
  if (known === null || known.walk === null) return found;
  if (found.walk?.id !== known.walk.id) return asked.acted === now.acted ? found : known;
  // nothing takes an act out of a walk: undoing is one
  const isBehind = known.walk.acts.length - found.walk.acts.length;
  if (isBehind > 0) return known;
  if (found.practice === null || known.practice === null) return found;
  const { isBlocked, turned } = known.practice;
  return {
    ...found,
    practice: {
      ...found.practice,
      ...(asked.blocked === now.blocked ? {} : { isBlocked }),
      // each step begins with no screw turned
      ...(asked.turned === now.turned || isBehind < 0 ? {} : { turned }),
    },
  };
}

/** Follows the walk of a launch: fetched anew with every change there is, so that all pages are in step. */
export function useWalk(launch: string): WalkHeld {
  const { world, hearPassing } = useKeeping();
  const { sequence, loaded, connection } = useKept();
  const [stands, setStands] = useState<WalkHeld['stands']>(null);
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  /** The walk as the last act of this page left it. */
  const [own, setOwn] = useState<string | null>(null);
  /** A write whose answer was lost keeps its name, so that it is done once. */
  const since = useRef<Since>({ acted: 0, blocked: 0, turned: 0 });
  const unanswered = useRef<{ readonly key: string; readonly write: string } | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: every change (`sequence`) may have been an act
  useEffect(() => {
    if (!loaded) return;
    let left = false;
    const asked = since.current;
    ask(world, routes.walk, { id: launch }, null).then(
      (found) => {
        if (!left) setStands((before) => newerStands(before, found, asked, since.current));
      },
      () => {
        if (!left) setStands((before) => before ?? 'failed');
      },
    );
    return () => {
      left = true;
    };
  }, [world, launch, sequence, loaded, connection]);

  const walk = stands === null || stands === 'failed' ? null : stands.walk;
  const going = walk?.id ?? null;
  const asked = walk?.acts.length ?? 0;
  useEffect(() => {
    if (going === null) return;
    return hearPassing((message) => {
      if (message.type !== 'turned' || message.walk !== going || message.after !== asked) return;
      since.current = oneMore(since.current, 'turned');
      setStands((before) => withPractice(before, { turned: message.turned }));
    });
  }, [hearPassing, going, asked]);
  const send = useCallback(
    async (key: string, sending: (write: string) => Promise<WalkStands>, quietly = false): Promise<void> => {
      const write = unanswered.current?.key === key ? unanswered.current.write : world.newId();
      unanswered.current = { key, write };
      setBusy(true);
      try {
        const left = await sending(write);
        since.current = oneMore(since.current, 'acted');
        setStands(left);
        setOwn(stateOf(left.walk));
        setSaid(null);
        unanswered.current = null;
      } catch (error) {
        if (!(error instanceof NotDone)) setSaid(walkTexts.notKept);
        else {
          unanswered.current = null;
          if (error.answer.code !== 'stale') setSaid(error.message);
          else {
            if (!quietly) setSaid(walkTexts.first);
            const asked = since.current;
            const found = await ask(world, routes.walk, { id: launch }, null).catch(() => null);
            if (found !== null) setStands((before) => newerStands(before, found, asked, since.current));
          }
        }
      } finally {
        setBusy(false);
      }
    },
    [world, launch],
  );
  /** What is done at the practice bench while a request is on its way, sent one after the other. */
  const queue = useRef<Promise<void>>(Promise.resolve());
  const queued = useRef(0);
  const isTold = stands !== null && stands !== 'failed' && stands.practice?.truth != null;

  const practise = (asking: (walk: string, write: string) => Promise<unknown>): void => {
    if (walk === null) return;
    const { id } = walk;
    const write = world.newId();
    queued.current += 1;
    queue.current = queue.current.then(async () => {
      try {
        await asking(id, write);
        setSaid(null);
      } catch {
        setSaid(walkTexts.notKept);
      }
      queued.current -= 1;
      // the truth is of the screws as they stand, and no change of the book tells that they were turned
      if (!isTold || queued.current > 0) return;
      const asked = since.current;
      const found = await ask(world, routes.walk, { id: launch }, null).catch(() => null);
      if (found !== null) setStands((before) => newerStands(before, found, asked, since.current));
    });
  };

  return {
    stands,
    said,
    busy,
    leads: walk !== null && own === stateOf(walk),
    practice: stands === null || stands === 'failed' ? null : stands.practice,
    begin: (how) =>
      void send(`begin ${JSON.stringify(how)}`, (write) =>
        ask(world, routes.beginWalk, { id: launch }, { ...how, write }),
      ),
    act: (act, quietly = false) => {
      if (walk === null) return;
      const after = walk.acts.length;
      void send(
        `${walk.id} ${after} ${JSON.stringify(act)}`,
        (write) => ask(world, routes.writeWalkAct, { id: walk.id }, { write, after, act }),
        quietly,
      );
    },
    reads: (how) => {
      if (walk === null) return;
      const after = walk.acts.length;
      void send(`${walk.id} ${after} ${JSON.stringify(how)}`, (write) =>
        ask(world, routes.chooseReads, { id: walk.id }, { ...how, write, after }),
      );
    },
    hand: () => {
      if (walk === null) return;
      const after = walk.acts.length;
      void send(`${walk.id} ${after} hand`, (write) =>
        ask(world, routes.handDoes, { id: walk.id }, { write, after }),
      );
    },
    turn: (screw, turns) =>
      practise((id, write) => ask(world, routes.turnScrew, { id }, { write, screw, turns })),
    block: (isBlocked) => {
      if (walk === null) return;
      since.current = oneMore(since.current, 'blocked');
      setStands((before) => withPractice(before, { isBlocked }));
      practise((id, write) => ask(world, routes.blockBeam, { id }, { write, blocked: isBlocked }));
    },
  };
}
