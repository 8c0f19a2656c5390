/**
 * The uncertainty that a bare value gets. It never carries a value past the limits of its key: hard limits are drawn in
 * to them.
 */
export type Doubt =
  | { readonly kind: 'exact'; readonly why: string }
  /** A share of the value; `hard` limits (rectangular) or one standard uncertainty. */
  | { readonly kind: 'share'; readonly share: number; readonly hard: boolean; readonly why: string }
  /** In SI, `shows` it in the user's units. */
  | {
      readonly kind: 'amount';
      readonly amount: number;
      readonly shows: string;
      readonly hard: boolean;
      readonly why: string;
    };

/** What is known better than any other number of the launch. */
export function exact(why: string): Doubt {
  return { kind: 'exact', why };
}

/** `plusMinus(0.1, …)`: ± 10 %, one standard uncertainty. */
export function plusMinus(share: number, why: string): Doubt {
  return { kind: 'share', share, hard: false, why };
}

/** `within(0.02, …)`: at most 2 % off. */
export function within(share: number, why: string): Doubt {
  return { kind: 'share', share, hard: true, why };
}

/** `plusMinusAmount(1e-9, '1 nm', …)`. */
export function plusMinusAmount(amount: number, shows: string, why: string): Doubt {
  return { kind: 'amount', amount, shows, hard: false, why };
}

/** As it stands in a table: `± 10 %`, `within 2 %`, `± 1 nm`, `exact`. */
export function doubtText(doubt: Doubt): string {
  if (doubt.kind === 'exact') return 'exact';
  const size = doubt.kind === 'share' ? `${Number((doubt.share * 100).toPrecision(6))} %` : doubt.shows;
  return `${doubt.hard ? 'within' : '±'} ${size}`;
}
