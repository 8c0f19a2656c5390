/** A bracket that opens and is never closed, or closed by one of the other kind. */
export interface OpenBracket {
  /** Of the bracket that opens, characters from the beginning. */
  readonly offset: number;
  readonly opens: '{' | '[';
}

/** The bracket that closes one. */
export const closes = (opens: OpenBracket['opens']): '}' | ']' => (opens === '{' ? '}' : ']');

/**
 * Finds the bracket a YAML parser means when it complains lines later. Brackets count where a value may begin or within
 * other brackets; those in quotes, in comments and within block text (`name: a [b]`) do not. Only of use for text that
 * the parser has refused: `null` where nothing is open.
 */
export function openBracket(text: string): OpenBracket | null {
  const open: OpenBracket[] = [];
  let beginsValue = true;
  for (let i = 0; i < text.length; i += 1) {
    const letter = text[i]!;
    const inside = open.length > 0;
    if (letter === '#' && (i === 0 || /\s/u.test(text[i - 1]!))) {
      i = endOf(text, '\n', i) - 1;
    } else if ((letter === '"' || letter === "'") && beginsValue) {
      i = endOfQuoted(text, letter, i);
      beginsValue = false;
    } else if ((letter === '{' || letter === '[') && (beginsValue || inside)) {
      open.push({ offset: i, opens: letter });
      beginsValue = true;
    } else if ((letter === '}' || letter === ']') && inside) {
      if (closes(open.at(-1)!.opens) !== letter) return open.at(-1)!;
      open.pop();
      beginsValue = false;
    } else if (letter === '\n' || (inside && letter === ',')) {
      beginsValue = true;
    } else if ((letter === ':' || letter === '-') && /\s/u.test(text[i + 1] ?? '\n')) {
      beginsValue = letter === ':' || beginsValue;
    } else if (!/\s/u.test(letter)) {
      beginsValue = false;
    }
  }
  return open.at(-1) ?? null;
}

function endOf(text: string, what: string, from: number): number {
  const at = text.indexOf(what, from);
  return at < 0 ? text.length : at;
}

/** The place of the closing quote; a single quote is written twice within single quotes. */
function endOfQuoted(text: string, quote: '"' | "'", from: number): number {
  for (let i = from + 1; i < text.length; i += 1) {
    if (quote === '"' && text[i] === '\\') i += 1;
    else if (text[i] === quote) {
      if (quote === '"' || text[i + 1] !== quote) return i;
      i += 1;
    }
  }
  return text.length;
}
