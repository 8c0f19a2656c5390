import { Refusal } from '../refusal.ts';
import { whereIs } from './place.ts';
import type { Tree } from './yaml-tree.ts';

/** How another kind of document gives itself away. */
export interface OtherKind {
  /** With its article: "a drawer". */
  readonly is: string;
  /** Keys that only it has; the first of them that is met decides. */
  readonly keys: readonly string[];
  readonly mend: string;
}

/**
 * One refusal for a document of another kind, where its form would refuse every key of it.
 *
 * @throws {Refusal} if the document has a key that only the other kind has
 */
export function mustNotBe({ is, keys, mend }: OtherKind, tree: Tree, file: string): void {
  if (tree.kind !== 'map') return;
  const telling = tree.entries.find(({ key }) => keys.includes(key));
  if (telling === undefined) return;
  throw new Refusal({
    where: whereIs(file, telling.at, telling.key),
    what: `\`${telling.key}\` makes this ${is}`,
    mend,
  });
}

/** The version of every document there is. */
const version = 1;

/**
 * One refusal for a document of a version that is yet to come, whose keys nobody here knows.
 *
 * @throws {Refusal} if it says that its version is a later one
 */
export function mustBeOfThisVersion(tree: Tree, file: string): void {
  if (tree.kind !== 'map') return;
  const value = tree.entries.find(({ key }) => key === 'coreward')?.value;
  if (value?.kind !== 'text' || !/^\d{1,6}$/u.test(value.text) || Number(value.text) <= version) return;
  throw new Refusal({
    where: whereIs(file, value.at, 'coreward'),
    what: `\`${value.text}\` is a later version of documents than is known here`,
    mend: `Write \`${version}\`. If a later Coreward wrote the document, open it with that one.`,
  });
}
