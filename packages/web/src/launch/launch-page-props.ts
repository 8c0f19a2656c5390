/** What the frame hands to the launch page. */
export interface LaunchPageProps {
  /** Its id in the bench book, where answers about its hazards are kept. */
  readonly id: string;
  /** The launch document as kept in the bench book. */
  readonly text: string;
  /** A finished change: the new document and what was done, in words, for undo. Not called while dragging. */
  readonly onChange: (text: string, what: string) => void;
  /** Marks our own invented example. */
  readonly invented: boolean;
  /** The drawer's parts that could be swapped in, as the drawer page keeps them. */
  readonly parts: readonly { readonly kind: string; readonly name: string; readonly text: string }[];
}
