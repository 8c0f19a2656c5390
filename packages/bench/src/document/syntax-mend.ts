import type { ErrorCode } from 'yaml';

/** What to do about text that is not YAML, by the parser's own code for what it met. */
export function syntaxMend(code: ErrorCode): string {
  switch (code) {
    case 'TAB_AS_INDENT':
      return 'Indent with spaces.';
    case 'BAD_INDENT':
    case 'MULTILINE_IMPLICIT_KEY':
      return 'Give every key of a part the same number of spaces before it, and close each bracket on its own part.';
    case 'BLOCK_AS_IMPLICIT_KEY':
      return 'Begin a new line before the second key, or put the keys into braces: `{ a: 1, b: 2 }`.';
    case 'BLOCK_IN_FLOW':
      return 'Close the bracket before the next line begins a key of its own.';
    case 'MISSING_CHAR':
      return 'Write `key: value` with a space after the colon, and close every quote and bracket.';
    case 'BAD_SCALAR_START':
    case 'BAD_DQ_ESCAPE':
      return "Put the text into single quotes: `'…'`.";
    case 'MULTIPLE_DOCS':
      return 'Put what follows the line `---` into a file of its own.';
    case 'BAD_DIRECTIVE':
      return 'Take out the line that begins with `%`.';
    case 'RESOURCE_EXHAUSTION':
      return 'Take out brackets or dashes until the entry stands where the key table shows it.';
    case 'ALIAS_PROPS':
    case 'BAD_ALIAS':
    case 'BAD_PROP_ORDER':
    case 'MULTIPLE_ANCHORS':
    case 'MULTIPLE_TAGS':
    case 'TAG_RESOLVE_FAILED':
    case 'BAD_COLLECTION_TYPE':
    case 'NON_STRING_KEY':
      return 'Write the value itself, without `&`, `*` or `!` in front of it.';
    case 'DUPLICATE_KEY':
      return 'Take out one of the two.';
    case 'KEY_OVER_1024_CHARS':
    case 'UNEXPECTED_TOKEN':
    case 'IMPOSSIBLE':
      return 'Write one `key: value` on a line, and text with special characters in single quotes.';
  }
}
