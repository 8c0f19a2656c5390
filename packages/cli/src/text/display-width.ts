const graphemes = new Intl.Segmenter('en', { granularity: 'grapheme' });

/** What a terminal draws two columns wide: East Asian wide and full-width characters, and emoji. */
const wide =
  /[\u1100-\u115f\u2e80-\u303e\u3041-\u33ff\u3400-\u4dbf\u4e00-\u9fff\ua000-\ua4cf\uac00-\ud7a3\uf900-\ufaff\ufe30-\ufe4f\uff00-\uff60\uffe0-\uffe6\u{20000}-\u{3fffd}]|\p{Emoji_Presentation}/u;

/** What takes no column of its own. */
const unseen = /^[\p{Mn}\p{Me}\p{Cf}\p{Cc}]*$/u;

/**
 * Columns that a text takes in a terminal.
 *
 * @source Unicode Standard Annex 11, East Asian Width (from memory): W and F are two columns, all else one
 */
export function displayWidth(text: string): number {
  if (/^[\x20-\x7e]*$/u.test(text)) return text.length;
  let columns = 0;
  for (const { segment } of graphemes.segment(text)) {
    columns += unseen.test(segment) ? 0 : wide.test(segment) ? 2 : 1;
  }
  return columns;
}

/** A text cut where it reaches `columns`, and what is left of it. Takes at least one character. */
export function splitAt(text: string, columns: number): readonly [head: string, tail: string] {
  let end = 0;
  let taken = 0;
  for (const { segment, index } of graphemes.segment(text)) {
    taken += displayWidth(segment);
    if (taken > columns && index > 0) break;
    end = index + segment.length;
  }
  return [text.slice(0, end), text.slice(end)];
}
