import {
  type Document,
  isAlias,
  isCollection,
  isMap,
  isScalar,
  isSeq,
  type Node,
  parseDocument,
  Scalar,
  visit,
} from 'yaml';
import type { FieldPath } from './fields.ts';
import type { Written } from './write-tree.ts';

/**
 * A document with one place changed; comments, order and the writing of everything else stay.
 *
 * Groups on the way that are not there yet are made; a word on the way (`focus: best`) gives way to a group. What an alias
 * repeats is written out where it is changed, so that no other place changes with it.
 *
 * @param text YAML that `readTree` takes
 * @param value `null` takes the place out
 */
export function setInText(text: string, path: FieldPath, value: Written | null): string {
  const document = parseDocument(text, { version: '1.2', schema: 'failsafe', uniqueKeys: false });
  const here = nodeAt(document, path);
  if (typeof value === 'string' && isScalar(here) && here.range && !here.anchor && !spansLines(here)) {
    const [start, end] = here.range;
    return text.slice(0, start) + scalarText(value) + text.slice(end);
  }
  unfoldAliases(document, path);
  if (value === null) takeOut(document, path);
  else put(document, path, value);
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

/** The node at a path that leads through no alias. */
function nodeAt(document: Document.Parsed, path: FieldPath): unknown {
  let node: unknown = document.contents;
  for (const step of path) {
    if (!isCollection(node)) return undefined;
    node = node.get(step, true);
  }
  return node;
}

const spansLines = ({ source, type }: Scalar): boolean =>
  type === Scalar.BLOCK_FOLDED || type === Scalar.BLOCK_LITERAL || (source ?? '').includes('\n');

/** Letters, figures and the signs of quantities and names: what needs no quotes in any place of YAML. */
const plain = /^[\p{L}\p{N}](?:[\p{L}\p{N} ./%°±²·+()_′'’–−-]*[\p{L}\p{N}.%°²)′'])?$/u;

function scalarText(value: string): string {
  return (plain.test(value) || /^[-+]\d+(?:\.\d+)?(?: \p{L}+)?$/u.test(value)) && !/^null$/i.test(value)
    ? value
    : JSON.stringify(value);
}

function unfoldAliases(document: Document.Parsed, path: FieldPath): void {
  let node: unknown = document.contents;
  path.forEach((step, index) => {
    if (!isCollection(node)) return;
    const next = node.get(step, true);
    const isLast = index === path.length - 1;
    if (isAlias(next) && !isLast) {
      const copy = next.resolve(document)?.clone() as Node | undefined;
      if (copy !== undefined) {
        // the copy is no second anchor of that name
        if ('anchor' in copy) delete copy.anchor;
        node.set(step, copy);
      }
    }
    node = node.get(step, true);
  });
}

function takeOut(document: Document.Parsed, path: FieldPath): void {
  if (isCollection(nodeAt(document, path.slice(0, -1)))) document.deleteIn(path);
}

function put(document: Document.Parsed, path: FieldPath, value: Written): void {
  if (path.length === 0 || document.contents === null) {
    document.contents = document.createNode(
      path.length === 0 ? written(value) : {},
    ) as typeof document.contents;
    if (path.length === 0) return;
  }
  path.slice(0, -1).forEach((_, index) => {
    const way = path.slice(0, index + 1);
    const node = nodeAt(document, way);
    if (isMap(node) || isSeq(node)) return;
    document.setIn(way, document.createNode(typeof path[index + 1] === 'number' ? [] : {}));
  });
  const before = nodeAt(document, path);
  const node = document.createNode(written(value)) as Node;
  visit(node, {
    Scalar: (_, scalar) => {
      if (typeof scalar.value === 'string' && /^(~|null|)$/i.test(scalar.value))
        scalar.type = Scalar.QUOTE_DOUBLE;
    },
    Collection: (_, collection) => {
      if (isMap(collection)) collection.flow = true;
    },
  });
  if (isScalar(before) && before.comment) node.comment = before.comment;
  document.setIn(path, node);
}

function written(value: Written): unknown {
  if (typeof value === 'string') return value;
  if (Array.isArray(value)) return value.map(written);
  return Object.fromEntries(
    Object.entries(value).flatMap(([key, each]) => (each === null ? [] : [[key, written(each)]])),
  );
}
