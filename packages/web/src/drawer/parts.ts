import type { PartKind, RefusedPlace } from '@coreward/bench';
import { readPart } from '@coreward/bench';
import type { KeptPart } from '@coreward/contract';
import type { KeepingState } from '../keeping/state.ts';
import { drawerTexts } from '../texts/drawer.ts';

/** A part as this page has it. */
export interface ShownPart {
  readonly id: string;
  readonly kind: PartKind;
  readonly name: string;
  readonly text: string;
  readonly putAway: boolean;
  readonly invented: boolean;
}

/** All parts with what is not kept yet, by name. */
export function partsOf(state: KeepingState): readonly ShownPart[] {
  const parts = new Map<string, ShownPart>(
    [...state.parts.values()].map((part: KeptPart) => [part.id, part]),
  );
  const pending = [...state.unwanted, ...state.clashes].map(({ thing, mine }) => ({ thing, content: mine }));
  for (const { thing, content } of [...pending, ...state.unkept]) {
    if (thing.kind !== 'part' || content.kind !== 'document') continue;
    const { text, putAway, invented } = content.body;
    const name = readPart({ kind: thing.part, text }).name;
    parts.set(thing.id, { id: thing.id, kind: thing.part, name, text, putAway, invented });
  }
  return [...parts.values()].sort((a, b) => a.name.localeCompare(b.name));
}

/**
 * What is refused of a part among the others of its drawer: its text, and a name that another one has.
 *
 * @param own the part itself, which may keep its name; null: it is new
 */
export function partCheck(
  kind: PartKind,
  parts: readonly ShownPart[],
  own: string | null,
): (text: string) => readonly RefusedPlace[] {
  const names = new Set(
    parts
      .filter((other) => other.id !== own && other.kind === kind && !other.putAway)
      .map(({ name }) => name),
  );
  return (text) => {
    const { name, refused } = readPart({ kind, text });
    if (refused.length > 0 || !names.has(name)) return refused;
    const { many } = drawerTexts.kinds[kind];
    return [
      { place: `${kind}s.1.name`, what: drawerTexts.taken(name, many), mend: drawerTexts.takenMend(name) },
    ];
  };
}
