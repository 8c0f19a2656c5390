import {
  type Launch,
  type PracticeBench,
  practise,
  type ReadSession,
  sessionOf,
  type WalkAct,
  type WalkMeter,
  type WalkNow,
  type WalkProcedureName,
  type WalkReads,
  walkNow,
  walkPlan,
} from '@coreward/bench';
import { keptWalk } from '@coreward/contract';
import { type KeptFile, notOfIt } from './kept-file.ts';

/** How a walk in a shell is led. */
export interface HowLed {
  readonly launch: Launch;
  readonly procedure: WalkProcedureName;
  /** Null: a real bench. */
  readonly bench: PracticeBench | null;
}

/** A walk that is led from a shell: a list of what was done, and where that leads. */
export interface LedWalk {
  readonly now: () => WalkNow;
  readonly session: () => ReadSession;
  /** Keeps it first. @param byHand the simulated hand did it, and would have to do it again */
  readonly act: (act: WalkAct, byHand?: boolean) => Promise<void>;
  /** What reads the light from now on, unless it did already. Whether the walk begins anew by it. */
  readonly readBy: (instrument: string | null, meter: WalkMeter) => Promise<boolean>;
}

/**
 * Goes on with what is kept.
 *
 * @param path of the file it is kept in, for refusals
 * @throws {Refusal} if a line of it is none of a walk
 */
export function ledWalk({ launch, procedure, bench }: HowLed, kept: KeptFile, path: string): LedWalk {
  const plan = walkPlan(launch);
  const meter = bench === null ? 'typed' : 'power';
  const begun = { procedure, reads: { instrument: null, meter, floor: null, goesOn: false } } as const;
  const acts: WalkAct[] = [];
  const session = () => sessionOf(begun, acts);
  const now = () => walkNow(plan, session());
  for (const { line, text } of kept.before) {
    const read = actIn(text);
    if (read === null) throw notOfIt(path, line, 'it says nothing that was done in a walk');
    const { ask } = now();
    if (read.byHand && bench !== null && ask !== null) practise(bench, { do: 'hand', step: ask.step });
    acts.push(read.act);
  }
  const act = async (done: WalkAct, byHand = false): Promise<void> => {
    await kept.add(written(done, byHand));
    acts.push(done);
  };
  return {
    now,
    session,
    act,
    readBy: async (instrument, counts) => {
      const before = session();
      if (before.reads.instrument === instrument && before.meter === counts) return false;
      const reads: WalkReads = { instrument, meter: counts, floor: null, goesOn: instrument !== null };
      await act({ do: 'reads', reads, anew: false });
      return session().answers.length < before.answers.length;
    },
  };
}

function written(act: WalkAct, byHand: boolean): string {
  if (act.do !== 'reads') return JSON.stringify(byHand ? { ...act, by: 'hand' } : act);
  const { instrument, ...reads } = act.reads;
  return JSON.stringify({ ...act, reads: { instrument: null, ...reads }, device: instrument });
}

function actIn(text: string): { readonly act: WalkAct; readonly byHand: boolean } | null {
  let read: unknown;
  try {
    read = JSON.parse(text);
  } catch {
    return null;
  }
  if (typeof read !== 'object' || read === null) return null;
  const { by, device, ...rest } = read as { readonly by?: unknown; readonly device?: unknown };
  const [act] = keptWalk.shape.acts.safeParse([rest]).data ?? [];
  if (act === undefined) return null;
  // a device of a shell has a path, where an instrument of a bench book has an id
  const isByDevice = act.do === 'reads' && typeof device === 'string';
  return {
    act: isByDevice ? { ...act, reads: { ...act.reads, instrument: device } } : act,
    byHand: by === 'hand',
  };
}
