import { Refusal, readDrawer, readLaunch, readSinglePart } from '@coreward/bench';
import { settings } from '@coreward/contract';
import type { DocumentKind } from './kept-document.ts';

/** Names of settings are not shown anywhere. */
const settingsName = 'settings';

/**
 * The name of a document that reads as what it is said to be.
 *
 * @throws {Refusal} with everything that is refused in it
 */
export function readableName(kind: DocumentKind, text: string): string {
  switch (kind) {
    case 'launch':
      return readLaunch(text, kind).name;
    case 'settings':
      mustBeSettings(text);
      return settingsName;
    default: {
      const part = readSinglePart(text, kind);
      if (part.kind === kind) return part.name;
      throw new Refusal({
        where: kind,
        what: `this is a ${part.kind}`,
        mend: `Keep it as a ${part.kind}.`,
      });
    }
  }
}

/** The same of a document from elsewhere, which another version of Coreward may have been content with. */
export function anyName(kind: DocumentKind, text: string): string {
  try {
    return readableName(kind, text);
  } catch (error) {
    if (error instanceof Refusal) return `${kind} that cannot be read`;
    throw error;
  }
}

function mustBeSettings(text: string): void {
  const { drawerPath } = settings.parse(JSON.parse(text));
  if (drawerPath === null) return;
  const { path, ...drawer } = readDrawer([{ text: drawerPath, file: 'drawer path' }]);
  const parts = Object.values(drawer).filter((list) => Array.isArray(list) && list.length > 0);
  if (parts.length > 0 || path.length === 0) {
    throw new Refusal({
      where: 'drawer path',
      what: parts.length > 0 ? 'there are parts in it' : 'there is no path in it',
      mend: 'Write `coreward: 1` and `path`, and nothing else; or set it to null.',
    });
  }
}
