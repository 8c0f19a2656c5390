import { Document, isCollection, isMap, isScalar, type Node, Scalar, visit } from 'yaml';

/** What can be written: texts, lists and groups of keys; what is `null` is left out. */
export type Written = string | readonly Written[] | { readonly [key: string]: Written | null };

/** A group of at most so many keys without groups of its own stands on one line. */
const mostOnOneLine = 4;

/** YAML 1.2 that `readTree` reads back to the same texts. */
export function writeTree(written: Written): string {
  const document = new Document(withoutNull(written), { version: '1.2', schema: 'failsafe' });
  visit(document, {
    Scalar: (_, node) => {
      // unquoted, these three would read as nothing
      if (typeof node.value === 'string' && /^(~|null|)$/i.test(node.value)) node.type = Scalar.QUOTE_DOUBLE;
    },
    Collection: (key, node) => {
      if (key !== null && isShort(node)) node.flow = true;
    },
  });
  return document.toString({ lineWidth: 0, flowCollectionPadding: true });
}

function withoutNull(written: Written): Written {
  if (typeof written === 'string') return written;
  if (Array.isArray(written)) return written.map(withoutNull);
  return Object.fromEntries(
    Object.entries(written).flatMap(([key, value]) => (value === null ? [] : [[key, withoutNull(value)]])),
  );
}

function isShort(node: Node): boolean {
  if (!isCollection(node) || node.items.length > mostOnOneLine) return false;
  return (
    isMap(node) &&
    node.items.every(({ value }) => isScalar(value) || (isCollection(value) && value.items.length === 0))
  );
}
