/** How much may be asked: `burst` at once, and `perSecond` in the long run. */
export interface Allowance {
  readonly burst: number;
  readonly perSecond: number;
}

interface Bucket {
  readonly left: number;
  readonly at: number;
}

/** More comers than this are not told apart any longer: those who have been quiet longest are forgotten. */
const mostComers = 5_000;

/** Counts what each comer asks for (a token bucket). */
export class RateLimit {
  readonly #allowance: Allowance;
  readonly #now: () => Date;
  readonly #buckets = new Map<string, Bucket>();

  constructor(allowance: Allowance, now: () => Date) {
    this.#allowance = allowance;
    this.#now = now;
  }

  /** Whether this comer may ask once more now. */
  allows(comer: string): boolean {
    const at = this.#now().getTime();
    const { burst, perSecond } = this.#allowance;
    const before = this.#buckets.get(comer) ?? { left: burst, at };
    // a clock that was set back gives nothing
    const left = Math.min(burst, before.left + (Math.max(0, at - before.at) / 1000) * perSecond);
    this.#buckets.delete(comer); // and set anew: the map's order is that of the last question
    this.#buckets.set(comer, { left: left >= 1 ? left - 1 : left, at });
    if (this.#buckets.size > mostComers) {
      const [oldest] = this.#buckets.keys();
      if (oldest !== undefined) this.#buckets.delete(oldest);
    }
    return left >= 1;
  }
}
