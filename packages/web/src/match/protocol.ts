import type { KeptPart, LeftOut, MatchPurpose, MatchRow, RefusedPlace } from '@coreward/bench';

/** What the match is asked: the drawer as documents, what for, and which laser (`null`: all). */
export interface MatchQuestion {
  readonly parts: readonly KeptPart[];
  readonly way: string | null;
  readonly purpose: MatchPurpose;
  readonly laser: string | null;
}

/** What it says, while it goes on and at its end. */
export type MatchSaid =
  | {
      readonly kind: 'progress';
      readonly done: number;
      readonly total: number;
      readonly best: MatchRow | null;
    }
  | { readonly kind: 'done'; readonly rows: readonly MatchRow[]; readonly leftOut: readonly LeftOut[] }
  | { readonly kind: 'refused'; readonly refused: readonly RefusedPlace[] }
  | { readonly kind: 'fault'; readonly message: string };
