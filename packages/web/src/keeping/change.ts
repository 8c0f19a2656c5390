import type { KeptSettings, PartKind, Settings } from '@coreward/contract';

/** A thing that is kept in versions. */
export type Thing =
  | { readonly kind: 'launch'; readonly id: string }
  | { readonly kind: 'part'; readonly id: string; readonly part: PartKind }
  | { readonly kind: 'settings' };

/** What a launch or a part says. */
export interface Body {
  readonly text: string;
  readonly putAway: boolean;
  readonly invented: boolean;
}

/** A thing as it is kept: `null` for one that does not exist yet. */
export type Content =
  | { readonly kind: 'document'; readonly body: Body }
  | { readonly kind: 'settings'; readonly settings: Settings };

/** Something done on this page, with both sides of it, so that it can be undone. */
export interface Change {
  readonly thing: Thing;
  /** `null`: the thing was new. */
  readonly before: Content | null;
  readonly after: Content;
  /** In words: "focal length 6.2 mm to 7 mm". */
  readonly what: string;
  /** The path of the page it was done on. */
  readonly where: string;
}

/** A write that is not acknowledged yet. */
export interface Unkept {
  readonly write: string;
  readonly thing: Thing;
  readonly content: Content;
  readonly what: string;
  /** The version that was changed; null: the one that the unkept write before it, of the same thing, leads to. */
  readonly base: number | null;
  /** Its place in the order of the writes of this browser. */
  readonly order: number;
}

export const keyOf = (thing: Thing): string =>
  thing.kind === 'settings' ? 'settings' : `${thing.kind} ${thing.id}`;

export const sameContent = (a: Content | null, b: Content | null): boolean =>
  JSON.stringify(a) === JSON.stringify(b);

/** A new thing that is undone is put away: nothing is ever taken out. */
export function undone({ before, after }: Change): Content {
  if (before !== null) return before;
  return after.kind === 'settings' ? after : { ...after, body: { ...after.body, putAway: true } };
}

export const settingsContent = ({ settings }: KeptSettings): Content => ({ kind: 'settings', settings });

/** The text of a document. */
export const contentOfText = (content: Content | null): string | null =>
  content?.kind === 'document' ? content.body.text : null;
