import { displayWidth, splitAt } from './display-width.ts';

/**
 * A text broken into lines of at most `width` columns. A number stays with the word behind it, its unit mostly; what
 * is longer than a line by itself is cut.
 */
export function wrap(text: string, width: number): readonly string[] {
  const lines: string[] = [];
  let line = '';
  for (const whole of unbreakable(text)) {
    // a row of numbers and units too long for one line may be broken after all
    const pieces = displayWidth(whole) > width ? whole.split(' ') : [whole];
    for (const piece of pieces) {
      if (line !== '' && displayWidth(line) + 1 + displayWidth(piece) <= width) {
        line += ` ${piece}`;
        continue;
      }
      if (line !== '') lines.push(line);
      line = piece;
      while (displayWidth(line) > width) {
        const [head, tail] = splitAt(line, width);
        lines.push(head);
        line = tail;
      }
    }
  }
  if (line !== '') lines.push(line);
  return lines;
}

/** Words, or several that must not be parted: `0.85 mm`, `±`. */
function unbreakable(text: string): readonly string[] {
  const groups: string[] = [];
  for (const word of text.split(/\s+/u)) {
    if (word === '') continue;
    const before = groups.at(-1);
    if (before !== undefined && (/(?:[\d±]|NA|M²)$/u.test(before) || word === '±')) {
      groups[groups.length - 1] = `${before} ${word}`;
    } else groups.push(word);
  }
  return groups;
}

/** The same with every line indented, the first by `first`, the others by spaces of its width. */
export function wrapHanging(text: string, first: string, width: number): readonly string[] {
  const indent = displayWidth(first);
  const lines = wrap(text, width - indent);
  return lines.map((line, i) => `${i === 0 ? first : ' '.repeat(indent)}${line}`);
}
