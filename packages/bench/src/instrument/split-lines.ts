/** Characters a line may have; a device that says more on one line says nothing of use. */
export const longestLine = 4096;

/** What has come of a line that has not ended yet. */
export interface UnfinishedLine {
  readonly text: string;
  /** It is longer than a line may be: the rest of it is passed over. */
  readonly tooLong: boolean;
}

/** Nothing left over. */
export const noLine: UnfinishedLine = { text: '', tooLong: false };

/** What a piece of a stream holds: whole lines, and the beginning of the next. */
export interface LinesSplit {
  /** Whole lines in their order, without their ends; empty ones and overlong ones are left out. */
  readonly lines: readonly string[];
  readonly rest: UnfinishedLine;
}

/**
 * The lines in what a device sends piece by piece, whichever way it ends them (CR, LF or both). However much comes, no
 * more than one line is held back.
 *
 * @param before what was left of the piece before; `noLine` at first
 */
export function splitLines(before: UnfinishedLine, piece: string): LinesSplit {
  const parts = piece.split(/[\r\n]/u);
  const lines: string[] = [];
  let rest = before;
  parts.forEach((part, index) => {
    rest = grown(rest, part);
    if (index === parts.length - 1) return;
    if (!rest.tooLong && rest.text !== '') lines.push(rest.text);
    rest = noLine;
  });
  return { lines, rest };
}

function grown({ text, tooLong }: UnfinishedLine, part: string): UnfinishedLine {
  if (tooLong || text.length + part.length > longestLine) return { text: '', tooLong: true };
  return { text: text + part, tooLong: false };
}
