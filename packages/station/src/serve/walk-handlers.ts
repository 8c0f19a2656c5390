import {
  answersThatCount,
  checkAnswer,
  type Launch,
  type PracticeAct,
  readLaunch,
  type WalkNow,
  type WalkPlan,
  walkActText,
  walkBeginningText,
  walkNow,
  walkPlan,
} from '@coreward/bench';
import { type BeginWalk, type KeptWalk, mostWalkActs, type WalkStands } from '@coreward/contract';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { newestWalk, walkKind } from '../bench-book/kept-walk.ts';
import { Declined } from '../declined.ts';
import type { PracticeBenches } from '../practice-benches.ts';
import type { SomeHandlers } from './call.ts';

type WalkRoute = 'walk' | 'beginWalk' | 'writeWalkAct' | 'turnScrew' | 'handDoes';

/** The walk of a launch, step by step, and the practice bench it may be tried on. */
export function walkHandlers(book: BenchBook, benches: PracticeBenches): SomeHandlers<WalkRoute> {
  const stands = (walk: KeptWalk | null): WalkStands => ({
    walk,
    meter: walk === null || walk.seed === null ? null : benches.meter(walk, launchOf(book, walk)),
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

  function actOf(walk: KeptWalk, write: string, act: KeptWalk['acts'][number]): KeptWalk {
    const now = nowOf(book, walk);
    if (act.do === 'answer') {
      if (now.ask === null) throw stale(walk, 'nothing is left to answer in this walk');
      checkAnswer(now.ask.step, act.answer);
    } else if (now.moves.length === 0) throw stale(walk, 'nothing was answered that could be undone');
    if (walk.acts.length >= mostWalkActs) throw tooLong();
    const data = { walk: walk.id, text: walkActText(now, act, walk.meter), act };
    const entry = { id: write, kind: walkKind, launch: walk.launch, data: JSON.stringify(data) };
    if (book.addEntry(entry) === null) throw taken(write);
    return { ...walk, acts: [...walk.acts, act] };
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
      walkPlan(readLaunch(document.text, 'launch')); // refuses what cannot be walked
      const begun = { ...factsOf(request, benches), version: document.version };
      const data = JSON.stringify({ text: walkBeginningText(begun), begun });
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

    turnScrew({ parameters: { id }, request: { write, screw, turns } }) {
      const walk = practiceBy(id);
      const { reading } = benches.act(walk, launchOf(book, walk), write, { do: 'turn', screw, turns });
      return { meter: reading };
    },

    handDoes({ parameters: { id }, request: { write, after } }) {
      const walk = practiceBy(id);
      if (book.entry(write) !== null) return stands(walk);
      inItsTurn(walk, after);
      const { ask } = nowOf(book, walk);
      if (ask === null) throw stale(walk, 'nothing is left to do in this walk');
      const act: PracticeAct = { do: 'hand', step: ask.step };
      const { answer } = benches.act(walk, launchOf(book, walk), write, act);
      return stands(answer === null ? walk : actOf(walk, write, { do: 'answer', answer }));
    },
  };
}

function factsOf({ procedure, meter, practice }: BeginWalk, benches: PracticeBenches) {
  if (practice === null) return { procedure, meter, seed: null };
  return {
    procedure,
    meter: meter === 'eye' ? meter : ('power' as const),
    seed: practice.seed ?? benches.newSeed(),
  };
}

/** The launch as it stood on the bench when the walk began. */
function launchOf(book: BenchBook, { launch, version }: KeptWalk): Launch {
  const document = book.documents.version(launch, version);
  if (document === null) throw noLaunch(launch);
  return readLaunch(document.text, 'launch');
}

/** What a launch says about walking it costs some milliseconds, and every step asks for it. */
const plans = new WeakMap<BenchBook, { readonly key: string; readonly plan: WalkPlan }>();

function nowOf(book: BenchBook, walk: KeptWalk): WalkNow {
  const key = `${walk.launch} ${walk.version}`;
  const known = plans.get(book);
  const plan = known?.key === key ? known.plan : walkPlan(launchOf(book, walk));
  plans.set(book, { key, plan });
  return walkNow(plan, { ...walk, answers: answersThatCount(walk.acts) });
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

const noLaunch = (id: string): Declined =>
  new Declined('unknown', {
    where: `launch ${id}`,
    what: 'there is no such launch',
    mend: 'Choose one that is there.',
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
