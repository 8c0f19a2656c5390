import { printable } from './shown.ts';

/** A place in a text; both count from 1. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** The place of a character of `text`; the columns count UTF-16 units, as editors do. */
export function placeInText(text: string, offset: number): Place {
  const before = text.slice(0, offset);
  const lineStart = before.lastIndexOf('\n') + 1;
  let line = 1;
  for (let at = before.indexOf('\n'); at >= 0; at = before.indexOf('\n', at + 1)) line += 1;
  return { line, column: offset - lineStart + 1 };
}

/** `launch.yaml:21:17 collimator.focal length`; without the key for the document as a whole. */
export function whereIs(file: string, { line, column }: Place, path: string): string {
  const place = `${printable(file)}:${line}:${column}`;
  return path === '' ? place : `${place} ${path}`;
}
