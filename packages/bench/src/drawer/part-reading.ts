import { placesRefused, type RefusedPlace } from '../document/places.ts';
import { Refusal } from '../refusal.ts';
import type { Drawer } from './drawer.ts';
import { type KeptPart, listOf } from './part.ts';
import { readDrawer } from './read-drawer.ts';

/**
 * The drawer that parts make together.
 *
 * @param way a drawer document with nothing but the path from any laser to any collimator; `null`: nothing lies between
 * @throws {Refusal} with all that is refused in any of them
 */
export function drawerOfParts(parts: readonly KeptPart[], way: string | null): Drawer {
  const texts = [...parts.map(({ text }) => text), ...(way === null ? [] : [way])];
  return { ...readDrawer(texts.map((text) => ({ text, file: 'drawer' }))), name: 'drawer' };
}

/** The name of a part that can be read, and what is refused of it if it cannot. */
export function readPart({ kind, text }: KeptPart): {
  readonly name: string;
  readonly refused: readonly RefusedPlace[];
} {
  try {
    const drawer = readDrawer([{ text, file: 'drawer' }]);
    return { name: drawer[listOf[kind]][0]?.name ?? '', refused: [] };
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    return { name: '', refused: placesRefused(error) };
  }
}
