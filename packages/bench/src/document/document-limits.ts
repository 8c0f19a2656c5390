import { CST, Lexer } from 'yaml';
import { Refusal } from '../refusal.ts';
import { placeInText, whereIs } from './place.ts';

/**
 * What a document may be at most, so that no text can hold the reader up: a launch has some 100 lines of 40
 * characters. Deep nesting is found before the YAML package sees it, for its composer is recursive and, with the stack
 * used up, ends the whole process instead of throwing.
 */
export const documentLimits = {
  /** UTF-16 units. */
  characters: 256 * 1024,
  /** Marks and words. */
  tokens: 40_000,
  /** Brackets within brackets, or entries opened on one line. */
  depth: 16,
  /** Columns. */
  indentation: 100,
} as const;

/** What no text file holds: control characters, and what stands where bytes could not be decoded. */
const notText = /(?![\t\n\r])\p{Cc}|\p{Cs}|[\ufffd\ufffe\uffff]/u;

/** @throws {Refusal} if the text is too long, not text, or nested deeper than any launch or drawer */
export function mustBeModest(text: string, file: string): void {
  const refuse = (offset: number, what: string, mend: string): never => {
    throw new Refusal({ where: whereIs(file, placeInText(text, offset), ''), what, mend });
  };
  if (text.length > documentLimits.characters) {
    const size = (text.length / 1024).toFixed(0);
    throw new Refusal({
      where: whereIs(file, { line: 1, column: 1 }, ''),
      what: `the document has ${size} kB of text, more than the 256 kB that are read`,
      mend: 'Split it into several files, or check that this is the file you meant.',
    });
  }
  const strange = notText.exec(text);
  if (strange !== null) {
    const code = (strange[0].codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
    refuse(
      strange.index,
      `the character U+${code} does not belong in a text file`,
      'Save the document as plain text in UTF-8.',
    );
  }
  let offset = 0;
  let tokens = 0;
  let brackets = 0;
  let openedOnLine = 0;
  let lineStart = true;
  for (const source of new Lexer().lex(text)) {
    tokens += 1;
    if (tokens > documentLimits.tokens) {
      refuse(offset, 'the document goes on for more entries than are read', 'Split it into several files.');
    }
    const type = CST.tokenType(source);
    switch (type) {
      case 'flow-map-start':
      case 'flow-seq-start':
        brackets += 1;
        break;
      case 'flow-map-end':
      case 'flow-seq-end':
        brackets = Math.max(0, brackets - 1);
        break;
      case 'seq-item-ind':
      case 'explicit-key-ind':
      case 'map-value-ind':
        if (brackets === 0) openedOnLine += 1;
        break;
      case 'newline':
        openedOnLine = 0;
        break;
      case 'space':
        if (lineStart && source.length > documentLimits.indentation) {
          refuse(offset, 'the line is indented too far', 'Indent by two spaces a level.');
        }
        break;
    }
    if (Math.max(brackets, openedOnLine) > documentLimits.depth) {
      refuse(
        offset,
        `more than ${documentLimits.depth} levels are opened within each other`,
        'Take out brackets or dashes until the entry stands where the key table shows it.',
      );
    }
    lineStart = type === 'newline' || (lineStart && type === 'doc-mode');
    if (type !== 'doc-mode' && type !== 'scalar' && type !== 'flow-error-end') offset += source.length;
  }
}
