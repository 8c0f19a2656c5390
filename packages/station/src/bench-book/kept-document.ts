import type { PartKind } from '@coreward/contract';

/** What is kept with every version it had. */
export type DocumentKind = 'launch' | PartKind | 'settings';

/** What a version says. */
export interface DocumentState {
  readonly name: string;
  readonly putAway: boolean;
  readonly invented: boolean;
  readonly text: string;
}

/** One version of a launch, a part or the settings. */
export interface KeptDocument extends DocumentState {
  readonly id: string;
  readonly kind: DocumentKind;
  readonly version: number;
  readonly changed: string;
}

/** One write, made by a page: `base` is the version it changes, 0 for none. */
export interface DocumentWrite extends DocumentState {
  readonly write: string;
  readonly base: number;
  readonly id: string;
  readonly kind: DocumentKind;
}

/** What became of a write. */
export type WriteOutcome =
  | { readonly kind: 'kept'; readonly document: KeptDocument; readonly again: boolean }
  /** The book has moved on; null if it never had one by that name. */
  | { readonly kind: 'stale'; readonly current: KeptDocument | null }
  /** The id belongs to something of another kind, or the write to another thing. */
  | { readonly kind: 'taken' };

/** One change to the book, in the order in which they were made. */
export type Change = { readonly sequence: number; readonly write: string } & (
  | { readonly subject: 'document'; readonly document: KeptDocument }
  | { readonly subject: 'entry'; readonly entry: BookEntry }
);

/** An entry as it is kept; `data` is JSON as it was sent. */
export interface BookEntry {
  readonly id: string;
  readonly time: string;
  readonly kind: string;
  readonly launch: string | null;
  readonly data: string;
}
