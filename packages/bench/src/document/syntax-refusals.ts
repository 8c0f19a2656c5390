import type { YAMLError } from 'yaml';
import type { RefusalParts } from '../refusal.ts';
import { closes, openBracket } from './open-bracket.ts';
import { type Place, whereIs } from './place.ts';
import { printable } from './shown.ts';
import { syntaxMend } from './syntax-mend.ts';

/** The parser takes one mistake for several: what follows the first few is noise. */
const mostSyntaxErrors = 5;

/**
 * What the parser found that is not YAML, told where it was done and once a line: what it says of a line after its first word
 * on it follows from that.
 */
export function syntaxRefusals(
  errors: readonly YAMLError[],
  text: string,
  file: string,
  placeOf: (offset: number) => Place,
): readonly RefusalParts[] {
  // the parser notices an open bracket lines later, and several times
  const bracket = errors.some(isOfBracket) ? openBracket(text) : null;
  const own =
    bracket === null ? errors : errors.filter((one) => !isOfBracket(one) && one.pos[0] < bracket.offset);
  // a line that a tab indents is no part of what it belongs to, and the lines around it do not fit any more
  const tabs = own.filter(({ code }) => code === 'TAB_AS_INDENT');
  const firsts = new Map<number, RefusalParts>();
  for (const error of tabs.length > 0 ? tabs : own) {
    const at = placeOf(error.pos[0]);
    if (firsts.has(at.line) || firsts.size === mostSyntaxErrors) continue;
    firsts.set(at.line, oddSpace(text, at.line, file) ?? refusal(error, at, file));
  }
  if (bracket === null) return [...firsts.values()];
  const { offset, opens } = bracket;
  const open = {
    where: whereIs(file, placeOf(offset), ''),
    what: `the bracket \`${opens}\` that opens here is not closed`,
    mend: `Write \`${closes(opens)}\` where it ends.`,
  };
  return [...firsts.values(), open];
}

function refusal({ code, message }: YAMLError, at: Place, file: string): RefusalParts {
  const what = code === 'MULTIPLE_DOCS' ? 'a second document begins here' : printable(message, 120);
  return { where: whereIs(file, at, ''), what: `this is not YAML: ${what}`, mend: syntaxMend(code) };
}

/** A space before or behind a key that looks like the usual one and is none to YAML, as pages of the web have them. */
function oddSpace(text: string, line: number, file: string): RefusalParts | null {
  const written = text.split(/\r?\n/u, line)[line - 1] ?? '';
  const found = /^( *)(?! )(\p{Zs})/u.exec(written) ?? /^([^:]*:)(?! )(\p{Zs})/u.exec(written);
  if (found === null) return null;
  const [, before = '', space = ''] = found;
  const code = (space.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0');
  return {
    where: whereIs(file, { line, column: before.length + 1 }, ''),
    what: `the space here is not the usual one (U+${code}), and none to YAML`,
    mend: 'Write usual spaces on this line.',
  };
}

const isOfBracket = ({ message }: { readonly message: string }): boolean => message.startsWith('Flow ');
