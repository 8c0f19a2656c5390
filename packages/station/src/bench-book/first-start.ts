import { observingLoftDrawer, observingLoftLaunch, partsIn, wayIn } from '@coreward/bench';
import { type Settings, settingsAtFirst } from '@coreward/contract';
import { newId } from '../world.ts';
import type { BenchBook } from './bench-book.ts';
import type { DocumentKind } from './kept-document.ts';
import { readableName } from './readable.ts';

/** The settings go by one name in every book. */
export const settingsId = '5e771465-0000-4000-8000-000000000000';

/** Our example goes by the same names in every book, so that importing one book into another does not double it. */
const exampleId = (rank: number): string => `e8a3b1e0-0000-4000-8000-${rank.toString(16).padStart(12, '0')}`;

/** Puts our own example into a new book: one launch and the drawer beside it, marked as invented. */
export function giveExample(book: BenchBook): void {
  const changed = book.world.now().toISOString();
  const settings: Settings = { ...settingsAtFirst, drawerPath: wayIn(observingLoftDrawer) };
  const documents: readonly { readonly id: string; readonly kind: DocumentKind; readonly text: string }[] = [
    { kind: 'launch' as const, text: observingLoftLaunch },
    ...partsIn(observingLoftDrawer),
  ].map((document, index) => ({ ...document, id: exampleId(index + 1) }));
  book.together(({ putDocument }) => {
    for (const { id, kind, text } of documents) {
      const name = readableName(kind, text);
      putDocument(
        { id, kind, text, name, version: 1, changed, putAway: false, invented: true },
        newId(book.world),
      );
    }
    const text = JSON.stringify(settings);
    putDocument(
      {
        id: settingsId,
        kind: 'settings',
        text,
        name: readableName('settings', text),
        version: 1,
        changed,
        putAway: false,
        invented: true,
      },
      newId(book.world),
    );
  });
}
