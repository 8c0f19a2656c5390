import {
  type PracticeAct,
  type PracticeBench,
  type Practised,
  practiceBenchOf,
  practise,
  readLaunch,
  type Screw,
  type TurnedScrew,
  withTurned,
} from '@coreward/bench';
import type { KeptWalk, LiveMessage, WalkStands } from '@coreward/contract';
import type { BenchBook } from './bench-book/bench-book.ts';
import { launchOfWalk, newestWalk, noLaunch, walkKind } from './bench-book/kept-walk.ts';

interface Standing {
  readonly walk: string;
  readonly bench: PracticeBench;
  /** What its live meter shows at this moment. */
  readonly look: () => number;
  /** Whether something was left before its beam. */
  isBlocked: boolean;
  /** The screw that was turned last, in the step behind so many acts of the walk. */
  turned: { readonly after: number; readonly turned: TurnedScrew } | null;
  /** What every act so far came to, by the name it was sent under. */
  readonly done: Map<string, Practised>;
}

const screws: readonly Screw[] = (['M1', 'M2'] as const).flatMap((mirror) =>
  (['horizontal', 'vertical'] as const).map((axis) => ({ mirror, axis })),
);

/** Benches in memory at once; one that was let go of is brought back from the book when it is needed again. */
const mostBenches = 4;
/** A bench at which nothing was done for so long, ms, is looked at no longer: a forgotten page fills no book. */
const leftAlone = 900_000;

/** The simulated benches that are being walked. The book keeps what was done at them; doing it again brings them back. */
export class PracticeBenches {
  readonly #book: BenchBook;
  readonly #tell: (message: LiveMessage) => void;
  readonly #standing = new Map<string, Standing>();
  /** The newest walk of each launch that is being watched, as long as nothing was entered of it. */
  readonly #newest = new Map<string, KeptWalk | null>();
  /** When something was last done at the bench of a launch, ms. */
  readonly #doneAt = new Map<string, number>();

  /** @param tell tells every page what happens at a bench and is no change of the book */
  constructor(book: BenchBook, tell: (message: LiveMessage) => void) {
    this.#book = book;
    this.#tell = tell;
    book.onChange((change) => {
      if (change.subject !== 'entry' || change.entry.kind !== walkKind || change.entry.launch === null)
        return;
      this.#newest.delete(change.entry.launch);
      this.#touch(change.entry.launch);
    });
  }

  newSeed(): number {
    return Buffer.from(this.#book.world.randomBytes(4)).readUInt32LE();
  }

  /** How the bench of a walk stands. @param isTold whether its truth may be told, too */
  standing(walk: KeptWalk, isTold: boolean): NonNullable<WalkStands['practice']> {
    const { bench, isBlocked, turned } = this.#standingOf(walk);
    const offsets = screws.map((screw) => ({ screw, turns: bench.trueOffset(screw) }));
    return {
      isBlocked,
      turned: turned?.after === walk.acts.length ? turned.turned : null,
      truth: isTold ? { share: bench.trueShare(), focus: bench.trueFocus(), offsets } : null,
    };
  }

  /** Does one thing, once for each name it is sent under. */
  act(walk: KeptWalk, write: string, act: PracticeAct): Practised {
    const standing = this.#standingOf(walk);
    const before = standing.done.get(write);
    if (before !== undefined) return before;
    const after = walk.acts.length;
    this.#book.addPracticeAct(walk.id, { write, act: JSON.stringify({ ...act, after }) });
    this.#touch(walk.launch);
    const done = does(standing, write, { ...act, after });
    const { turned } = standing;
    if (isTurn(act) && turned !== null) this.#tell({ type: 'turned', walk: walk.id, ...turned });
    return done;
  }

  /**
   * What a live meter on the bench of a launch shows, asked as often as one likes: the bench that is being walked, screws and
   * all, if it was drawn from this seed; otherwise one at which nobody does anything.
   *
   * @returns null while the bench is left alone
   * @throws {Declined} if there is no such launch
   */
  watch(launch: string, seed: number): () => number | null {
    const { now } = this.#book.world;
    const document = this.#book.documents.newest(launch);
    if (document?.kind !== 'launch') throw noLaunch(launch);
    const bench = practiceBenchOf(readLaunch(document.text, 'launch'), seed, 'steered-by-eye');
    const unwalked = bench.watcher(this.newSeed());
    this.#touch(launch);
    return () => {
      if (now().getTime() - (this.#doneAt.get(launch) ?? 0) > leftAlone) return null;
      const walk = this.#newestOf(launch);
      return walk?.seed === seed ? this.#standingOf(walk).look() : unwalked();
    };
  }

  #touch(launch: string): void {
    this.#doneAt.set(launch, this.#book.world.now().getTime());
  }

  #newestOf(launch: string): KeptWalk | null {
    const known = this.#newest.get(launch);
    if (known !== undefined) return known;
    const found = newestWalk(this.#book, launch);
    this.#newest.set(launch, found);
    return found;
  }

  #standingOf(walk: KeptWalk): Standing {
    const { id, seed } = walk;
    const known = this.#standing.get(id);
    if (known !== undefined) return known;
    const bench = practiceBenchOf(launchOfWalk(this.#book, walk), seed ?? 0, 'steered-by-eye');
    const standing: Standing = {
      walk: id,
      bench,
      look: bench.watcher(this.newSeed()),
      isBlocked: false,
      turned: null,
      done: new Map(),
    };
    for (const { write, act } of this.#book.practiceActs(id)) does(standing, write, JSON.parse(act));
    const [oldest] = this.#standing.keys();
    if (this.#standing.size >= mostBenches && oldest !== undefined) this.#standing.delete(oldest);
    this.#standing.set(id, standing);
    return standing;
  }
}

/** One thing done, in the step behind so many acts of the walk; books of an earlier version do not tell which. */
type DoneAct = PracticeAct & { readonly after?: number };

/** A turn by nothing only looks at the meter. */
const isTurn = (act: PracticeAct): act is Extract<PracticeAct, { do: 'turn' }> =>
  act.do === 'turn' && act.turns !== 0;

function does(standing: Standing, write: string, act: DoneAct): Practised {
  const done = practise(standing.bench, act);
  const { after } = act;
  if (after !== undefined && isTurn(act)) {
    const before = standing.turned?.after === after ? standing.turned.turned : null;
    standing.turned = { after, turned: withTurned(before, act.screw, act.turns) };
  }
  // the hand takes away whatever was left before the beam
  if (act.do !== 'turn') standing.isBlocked = act.do === 'block' && act.blocked;
  standing.done.set(write, done);
  return done;
}
