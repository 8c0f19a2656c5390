const usualLongest = 60;

/** Control and format characters, which could move a cursor, hide text or turn its direction, and lone surrogates. */
const unprintable = /[\p{Cc}\p{Cf}\p{Cs}\p{Zl}\p{Zp}]/gu;

/** Spaces that look like the usual one and are not: a key that begins with one is another key. */
const lookalike = /(?! )\p{Zs}/gu;

/** Whether a text can stand on one line of a terminal or a page as it is. */
export function isPrintable(text: string): boolean {
  return text.search(unprintable) < 0;
}

/** Text from a document made fit for one line of a terminal or a page: no control characters, and not endless. */
export function printable(text: string, longest = usualLongest): string {
  const head = [...text.slice(0, 2 * longest + 2)];
  const cut = head.length > longest ? `${head.slice(0, longest - 1).join('')}…` : head.join('');
  return cut.replace(unprintable, escaped).replace(lookalike, escaped);
}

function escaped(character: string): string {
  const code = character.codePointAt(0) ?? 0;
  return code === 0x0a ? '⏎' : `\\u${code.toString(16).padStart(4, '0')}`;
}

/** The offending text as written, between back-quotes: `` `6.2` ``. */
export function shown(text: string): string {
  return `\`${printable(text).replaceAll('`', "'")}\``;
}

/** `a`, `a or b`, `a, b or c`, for a mend that offers a choice. */
export function choiceOf(words: readonly string[]): string {
  if (words.length < 2) return words.join('');
  return `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
}
