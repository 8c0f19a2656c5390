/** How many letters must be put in, taken out, changed or swapped with their neighbour to get from one word to the other. */
function editsBetween(from: string, to: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: to.length + 1 }, (_, column) => column);
  for (let row = 1; row <= from.length; row += 1) {
    const next = [row];
    for (let column = 1; column <= to.length; column += 1) {
      const changed = from[row - 1] === to[column - 1] ? 0 : 1;
      let edits = Math.min(last[column]! + 1, next[column - 1]! + 1, last[column - 1]! + changed);
      if (row > 1 && column > 1 && from[row - 1] === to[column - 2] && from[row - 2] === to[column - 1]) {
        edits = Math.min(edits, beforeLast[column - 2]! + 1);
      }
      next.push(edits);
    }
    beforeLast = last;
    last = next;
  }
  return last[to.length]!;
}

/** Spaces, underscores, hyphens and capitals are the usual slips, and no difference in meaning. */
const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/gu, '');

/**
 * The word of `known` that was probably meant, or `null` if none is near: at most a third of its letters differ.
 *
 * @source edits counted after F. J. Damerau, Commun. ACM 7, 171 (1964), the restricted form; from memory
 */
export function nearestWord(written: string, known: readonly string[]): string | null {
  const wanted = plain(written.slice(0, 60));
  let nearest: string | null = null;
  let fewest = Number.POSITIVE_INFINITY;
  for (const word of known) {
    const goal = plain(word);
    const edits = editsBetween(wanted, goal);
    if (edits < fewest && edits <= Math.max(1, Math.floor(goal.length / 3))) {
      nearest = word;
      fewest = edits;
    }
  }
  return nearest;
}
