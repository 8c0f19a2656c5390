import {
  type Alias,
  type Document,
  isAlias,
  isMap,
  isPair,
  isScalar,
  isSeq,
  LineCounter,
  type ParsedNode,
  parseDocument,
} from 'yaml';
import { Refusal, type RefusalParts } from '../refusal.ts';
import { documentLimits, mustBeModest } from './document-limits.ts';
import { type Place, whereIs } from './place.ts';
import { shown } from './shown.ts';
import { syntaxRefusals } from './syntax-refusals.ts';

/** A document as it is written: every value is text, each thing knows its place, aliases are filled in. */
export type Tree =
  | { readonly kind: 'text'; readonly at: Place; readonly text: string }
  | { readonly kind: 'map'; readonly at: Place; readonly entries: readonly TreeEntry[] }
  | { readonly kind: 'list'; readonly at: Place; readonly items: readonly Tree[] }
  /** A key with nothing behind it, or `null` or `~`. */
  | { readonly kind: 'nothing'; readonly at: Place };

/** One key and what stands at it. */
export interface TreeEntry {
  readonly key: string;
  /** Of the key. */
  readonly at: Place;
  readonly value: Tree;
}

/** Entries after aliases are filled in. */
const mostEntries = 20_000;

/**
 * The documents that were read last: a page asks one text for its name, its launch and its fields, and parsing is most of
 * each. A tree is never written into, so it may be shared.
 */
const lastTrees = new Map<string, Tree>();
const mostTrees = 8;

/**
 * Reads YAML 1.2 (and JSON, which is YAML) without giving any value a type.
 *
 * @throws {Refusal} with every place that is not YAML, or that uses what a launch has no use for: tags, merge keys,
 * keys that are not text, a key twice, a second document, aliases that unfold without end
 * @source YAML 1.2.2 (yaml.org/spec/1.2.2), failsafe schema; from memory
 */
export function readTree(written: string, file: string): Tree {
  const key = `${file}\n${written}`;
  const known = lastTrees.get(key);
  if (known !== undefined) return known;
  const tree = treeIn(written, file);
  if (lastTrees.size >= mostTrees) lastTrees.delete(lastTrees.keys().next().value ?? '');
  lastTrees.set(key, tree);
  return tree;
}

function treeIn(written: string, file: string): Tree {
  // A lone CR ends a line in YAML (1.2.2, 5.4), and the parser does not know it; one for one, so that places stay.
  const text = written.replace(/\r(?!\n)/gu, '\n');
  mustBeModest(text, file);
  const lines = new LineCounter();
  const document = parsed(text, file, lines);
  const placeOf = (offset: number): Place => {
    const { line, col } = lines.linePos(offset);
    return { line: Math.max(1, line), column: Math.max(1, col) };
  };
  if (document.errors.length > 0) throw new Refusal(syntaxRefusals(document.errors, text, file, placeOf));
  const refusals: RefusalParts[] = [];
  const refuse = (at: Place, what: string, mend: string): void => {
    refusals.push({ where: whereIs(file, at, ''), what, mend });
  };
  const tree = treeOf(document, placeOf, refuse);
  if (refusals.length > 0) throw new Refusal(refusals);
  return tree;
}

/** `Flow map in block collection must be sufficiently indented and end with a }` and its like. */
function parsed(text: string, file: string, lineCounter: LineCounter): Document.Parsed {
  try {
    return parseDocument(text, {
      version: '1.2',
      schema: 'failsafe',
      // checked in treeOf: the parser compares each key with all before it
      uniqueKeys: false,
      prettyErrors: false,
      lineCounter,
    });
  } catch {
    throw new Refusal({
      where: whereIs(file, { line: 1, column: 1 }, ''),
      what: 'the YAML parser gave up on this document',
      mend: 'Start from one of the examples and add the parts one by one.',
    });
  }
}

type Refuse = (at: Place, what: string, mend: string) => void;

function treeOf(document: Document.Parsed, placeOf: (offset: number) => Place, refuse: Refuse): Tree {
  const anchors = new Map<string, ParsedNode>();
  let entries = 0;
  let unfoldsForEver = false;

  function visit(node: ParsedNode | null, at: Place, depth: number, unfolding: boolean): Tree {
    if (node === null) return { kind: 'nothing', at };
    entries += 1;
    if (depth > documentLimits.depth || entries > mostEntries) {
      if (!unfoldsForEver) {
        unfoldsForEver = true;
        if (unfolding) {
          refuse(at, 'its aliases unfold to more than any launch holds', 'Write the parts out.');
        } else {
          refuse(at, 'the entries lie too deep within each other or are too many', 'Take levels out.');
        }
      }
      return { kind: 'nothing', at };
    }
    if (isAlias(node)) return unfold(node, at, depth);
    if (node.tag !== undefined) {
      refuse(at, `the tag ${shown(node.tag)} has no meaning here`, 'Take out the word that begins with `!`.');
    }
    if (node.anchor !== undefined && !unfolding) anchors.set(node.anchor, node);
    if (isScalar(node)) {
      const text = String(node.value);
      const empty = node.type === 'PLAIN' && /^(~|null|)$/i.test(text);
      return empty ? { kind: 'nothing', at } : { kind: 'text', at, text };
    }
    if (isSeq(node)) {
      const items = node.items.map((item) =>
        isPair(item)
          ? ({ kind: 'nothing', at } as const)
          : visit(item as ParsedNode, unfolding ? at : start(item as ParsedNode, at), depth + 1, unfolding),
      );
      return { kind: 'list', at, items };
    }
    if (isMap(node)) return { kind: 'map', at, entries: entriesOf(node.items, at, depth, unfolding) };
    return { kind: 'nothing', at };
  }

  function start(node: ParsedNode | null, otherwise: Place): Place {
    return node === null ? otherwise : placeOf(node.range[0]);
  }

  function unfold(alias: Alias, at: Place, depth: number): Tree {
    const target = anchors.get(alias.source);
    if (target !== undefined) return visit(target, at, depth + 1, true);
    refuse(at, `nothing before it is marked ${shown(`&${alias.source}`)}`, 'Write the value itself.');
    return { kind: 'nothing', at };
  }

  function entriesOf(
    pairs: readonly { key: ParsedNode | null; value: ParsedNode | null }[],
    mapAt: Place,
    depth: number,
    unfolding: boolean,
  ): TreeEntry[] {
    const seen = new Set<string>();
    const found: TreeEntry[] = [];
    for (const { key, value } of pairs) {
      const at = unfolding ? mapAt : start(key, mapAt);
      if (!isScalar(key) || String(key.value) === '') {
        refuse(at, 'a key must be a word', 'Write `key: value`.');
        continue;
      }
      if (key.tag !== undefined || key.anchor !== undefined) {
        refuse(at, `the key ${shown(String(key.value))} carries a tag or an anchor`, 'Write the key alone.');
        continue;
      }
      const name = String(key.value);
      if (name === '<<') {
        refuse(at, '`<<` merges nothing here', 'Write the keys out, or put the alias behind a key.');
      } else if (seen.has(name)) {
        refuse(at, `${shown(name)} stands twice in the same part`, 'Take out one of the two.');
      } else {
        seen.add(name);
        found.push({
          key: name,
          at,
          value: visit(value, unfolding ? at : start(value, at), depth + 1, unfolding),
        });
      }
    }
    return found;
  }

  const contents = document.contents as ParsedNode | null;
  return visit(contents, start(contents, { line: 1, column: 1 }), 0, false);
}
