import {
  type Launch,
  type PracticeAct,
  type PracticeBench,
  type Practised,
  practiceBenchOf,
  practise,
} from '@coreward/bench';
import type { KeptWalk } from '@coreward/contract';
import type { BenchBook } from './bench-book/bench-book.ts';

interface Standing {
  readonly walk: string;
  readonly bench: PracticeBench;
  /** What every act so far came to, by the name it was sent under. */
  readonly done: Map<string, Practised>;
  meter: number;
}

/** Benches in memory at once; one that was let go of is brought back from the book when it is needed again. */
const mostBenches = 4;

/** The simulated benches that are being walked. The book keeps what was done at them; doing it again brings them back. */
export class PracticeBenches {
  readonly #book: BenchBook;
  readonly #standing = new Map<string, Standing>();
  readonly #turned: (walk: string, meter: number) => void;

  /** @param turned is told what the meter shows after every act */
  constructor(book: BenchBook, turned: (walk: string, meter: number) => void) {
    this.#book = book;
    this.#turned = turned;
  }

  newSeed(): number {
    return Buffer.from(this.#book.world.randomBytes(4)).readUInt32LE();
  }

  /** What the meter shows, as it was last seen. */
  meter(walk: KeptWalk, launch: Launch): number {
    return this.#standingOf(walk, launch).meter;
  }

  /** Does one thing, once for each name it is sent under. */
  act(walk: KeptWalk, launch: Launch, write: string, act: PracticeAct): Practised {
    const standing = this.#standingOf(walk, launch);
    const before = standing.done.get(write);
    if (before !== undefined) return before;
    this.#book.addPracticeAct(walk.id, { write, act: JSON.stringify(act) });
    const done = does(standing, write, act);
    this.#turned(walk.id, done.reading);
    return done;
  }

  #standingOf({ id, seed }: KeptWalk, launch: Launch): Standing {
    const known = this.#standing.get(id);
    if (known !== undefined) return known;
    const bench = practiceBenchOf(launch, seed ?? 0, 'steered-by-eye');
    const standing: Standing = { walk: id, bench, done: new Map(), meter: bench.standing() };
    for (const { write, act } of this.#book.practiceActs(id)) does(standing, write, JSON.parse(act));
    const [oldest] = this.#standing.keys();
    if (this.#standing.size >= mostBenches && oldest !== undefined) this.#standing.delete(oldest);
    this.#standing.set(id, standing);
    return standing;
  }
}

function does(standing: Standing, write: string, act: PracticeAct): Practised {
  const done = practise(standing.bench, act);
  standing.done.set(write, done);
  standing.meter = done.reading;
  return done;
}
