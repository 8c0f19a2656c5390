/** What a forecast says, in pieces that a terminal, a screen or a sheet of paper sets each in its own way. */
export interface Section {
  readonly heading: string;
  readonly blocks: readonly Block[];
}

/** One piece of a section, for a screen or a shell to set. */
export type Block =
  | { readonly kind: 'text'; readonly text: string }
  /** A word at the margin and what is said about it. */
  | { readonly kind: 'terms'; readonly rows: readonly Term[] }
  | { readonly kind: 'list'; readonly numbered: boolean; readonly items: readonly string[] }
  | Table;

/** A word and what is said about it. */
export interface Term {
  readonly term: string;
  readonly text: string;
}

/** Columns with their headings, and rows. */
export interface Table {
  readonly kind: 'table';
  readonly columns: readonly Column[];
  readonly rows: readonly Row[];
}

/** A heading may take several lines. */
export interface Column {
  readonly heading: string;
  readonly align: 'left' | 'right';
}

/** One row of a table. */
export type Row =
  | { readonly kind: 'heading'; readonly text: string }
  | { readonly kind: 'cells'; readonly cells: readonly Cell[] }
  | { readonly kind: 'rule' };

/** A text, or a share from 0 to 1 that is drawn; what a bar shows always stands in figures beside it, too. */
export type Cell = string | { readonly bar: number };
