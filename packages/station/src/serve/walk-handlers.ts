import {
  checkAnswer,
  type PracticeAct,
  readLaunch,
  sessionOf,
  type WalkNow,
  type WalkPlan,
  walkActText,
  walkBeginningText,
  walkNow,
  walkPlan,
  walkReadsText,
} from '@coreward/bench';
import { type KeptWalk, mostWalkActs, type WalkStands } from '@coreward/contract';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { launchOfWalk, newestWalk, noLaunch, walkKind } from '../bench-book/kept-walk.ts';
import { Declined } from '../declined.ts';
import type { Instruments } from '../instruments/instruments.ts';
import type { PracticeBenches } from '../practice-benches.ts';
import type { SomeHandlers } from './call.ts';
import { practiceMeter, readsChosen } from './walk-reads.ts';

type WalkRoute =
  | 'walk'
  | 'beginWalk'
  | 'writeWalkAct'
  | 'chooseReads'
  | 'turnScrew'
  | 'blockBeam'
  | 'handDoes';

/** The walk of a launch, step by step, what reads its light, and the practice bench it may be tried on. */
export function walkHandlers(
  book: BenchBook,
  benches: PracticeBenches,
  instruments: Instruments,
): SomeHandlers<WalkRoute> {
  const stands = (walk: KeptWalk | null): WalkStands => ({
    walk,
    // what is hidden is told only when nothing can be learnt from it any more
    practice:
      walk === null || walk.seed === null ? null : benches.standing(walk, nowOf(book, walk).verdict !== null),
  });

  /** @throws {Declined} if the walk is on a real bench */
  function practiceBy(id: string): KeptWalk {
    const walk = walkBy(id);
    if (walk.seed === null) throw noPractice();
    return walk;
  }

  /** @throws {Declined} if a newer one was begun, with that; or if there never was one */
  function walkBy(id: string): KeptWalk {
    const launch = book.entry(id)?.launch ?? null;
    const walk = launch === null ? null : newestWalk(book, launch);
    if (walk === null) throw noWalk(id);
    if (walk.id !== id) throw stale(walk, 'another walk was begun at this launch');
    return walk;
  }

  type Act = KeptWalk['acts'][number];

  function actOf(walk: KeptWalk, write: string, act: Exclude<Act, { do: 'reads' }>): KeptWalk {
    const now = nowOf(book, walk);
    if (act.do === 'answer') {
      if (now.ask === null) throw stale(walk, 'nothing is left to answer in this walk');
      checkAnswer(now.ask.step, act.answer);
    } else if (now.moves.length === 0) throw stale(walk, 'nothing was answered that could be undone');
    return entered(walk, write, act, walkActText(now, act, sessionOf(walk, walk.acts).meter));
  }

  function entered(walk: KeptWalk, write: string, act: Act, text: string): KeptWalk {
    if (walk.acts.length >= mostWalkActs) throw tooLong();
    const data = JSON.stringify({ walk: walk.id, text, act });
    const kept = book.addEntry({ id: write, kind: walkKind, launch: walk.launch, data });
    if (kept === null) throw taken(write);
    return { ...walk, acts: [...walk.acts, act], times: [...walk.times, kept.time] };
  }

  /** @throws {Declined} with the walk as it is, if another page was first */
  function inItsTurn(walk: KeptWalk, after: number): void {
    if (walk.acts.length !== after) throw stale(walk, 'another page has answered this step');
  }

  return {
    walk: ({ parameters: { id } }) => stands(newestWalk(book, id)),

    beginWalk({ parameters: { id }, request }) {
      const document = book.documents.newest(id);
      if (document?.kind !== 'launch') throw noLaunch(id);
      if (book.entry(request.write) !== null) return stands(newestWalk(book, id));
      const launch = readLaunch(document.text, 'launch');
      walkPlan(launch); // refuses what cannot be walked
      const { procedure, practice, goesOn } = request;
      const seed = practice === null ? null : (practice.seed ?? benches.newSeed());
      const chosen =
        seed === null || request.reads.by === 'eye'
          ? request.reads
          : practiceMeter(instruments, { id, name: launch.name }, seed);
      const { reads, name } = readsChosen(instruments, chosen, goesOn, null);
      const begun = { procedure, reads, seed, version: document.version };
      const text = walkBeginningText({ procedure, meter: reads.meter, seed }, name);
      const data = JSON.stringify({ text, begun });
      if (book.addEntry({ id: request.write, kind: walkKind, launch: id, data }) === null)
        throw taken(request.write);
      return stands(newestWalk(book, id));
    },

    writeWalkAct({ parameters: { id }, request: { write, after, act } }) {
      const walk = walkBy(id);
      // sent again after a lost connection: it is answered alike
      if (book.entry(write) !== null) return stands(walk);
      inItsTurn(walk, after);
      return stands(actOf(walk, write, act));
    },

    chooseReads({ parameters: { id }, request: { write, after, reads: chosen, goesOn, anew } }) {
      const walk = walkBy(id);
      if (book.entry(write) !== null) return stands(walk);
      inItsTurn(walk, after);
      const before = sessionOf(walk, walk.acts);
      const { reads, name } = readsChosen(instruments, chosen, goesOn, before.meter);
      const act = { do: 'reads', reads, anew } as const;
      const isAnew = anew || sessionOf(walk, [...walk.acts, act]).answers.length < before.answers.length;
      return stands(entered(walk, write, act, walkReadsText(reads.meter, name, isAnew)));
    },

    turnScrew({ parameters: { id }, request: { write, screw, turns } }) {
      const { reading } = benches.act(practiceBy(id), write, { do: 'turn', screw, turns });
      return { meter: reading };
    },

    blockBeam({ parameters: { id }, request: { write, blocked } }) {
      const { reading } = benches.act(practiceBy(id), write, { do: 'block', blocked });
      return { meter: reading };
    },

    handDoes({ parameters: { id }, request: { write, after } }) {
      const walk = practiceBy(id);
      if (book.entry(write) !== null) return stands(walk);
      inItsTurn(walk, after);
      const { ask } = nowOf(book, walk);
      if (ask === null) throw stale(walk, 'nothing is left to do in this walk');
      const act: PracticeAct = { do: 'hand', step: ask.step };
      const { answer } = benches.act(walk, write, act);
      return stands(answer === null ? walk : actOf(walk, write, { do: 'answer', answer }));
    },
  };
}

/** What a launch says about walking it costs some milliseconds, and every step asks for it. */
const plans = new WeakMap<BenchBook, { readonly key: string; readonly plan: WalkPlan }>();

function nowOf(book: BenchBook, walk: KeptWalk): WalkNow {
  const key = `${walk.launch} ${walk.version}`;
  const known = plans.get(book);
  const plan = known?.key === key ? known.plan : walkPlan(launchOfWalk(book, walk));
  plans.set(book, { key, plan });
  return walkNow(plan, sessionOf(walk, walk.acts));
}

const stale = (walk: KeptWalk, what: string): Declined =>
  new Declined('stale', { where: 'walk', what, mend: 'Look at what is asked now, and answer that.' }, walk);

const noWalk = (id: string): Declined =>
  new Declined('unknown', { where: `walk ${id}`, what: 'there is no such walk', mend: 'Begin one.' });

const noPractice = (): Declined =>
  new Declined('refused', {
    where: 'walk',
    what: 'this walk is on a real bench, whose screws only a hand can turn',
    mend: 'Begin a practice walk.',
  });

const taken = (write: string): Declined =>
  new Declined('refused', {
    where: `entry ${write}`,
    what: 'this name means something else in the bench book',
    mend: 'Send it under a new name.',
  });

const tooLong = (): Declined =>
  new Declined('too long', {
    where: 'walk',
    what: `a walk has no more than ${mostWalkActs} steps`,
    mend: 'Begin a new walk.',
  });
