import { partKinds } from '@coreward/bench';
import type { KeptLaunch, KeptPart, RefusedAnswer } from '@coreward/contract';
import type { BenchBook } from '../bench-book/bench-book.ts';
import { settingsId } from '../bench-book/first-start.ts';
import type { DocumentWrite, KeptDocument } from '../bench-book/kept-document.ts';
import { readableName } from '../bench-book/readable.ts';
import { Declined } from '../declined.ts';
import { factsOf, isPart, launchOf, partOf, settingsOf, summaryOf } from './answers.ts';
import type { SomeHandlers } from './call.ts';

type DocumentRoute =
  | 'launches'
  | 'launch'
  | 'writeLaunch'
  | 'launchVersions'
  | 'launchVersion'
  | 'parts'
  | 'part'
  | 'writePart'
  | 'partVersions'
  | 'partVersion'
  | 'settings'
  | 'writeSettings';

/** Launches, parts and settings. */
export function documentHandlers(book: BenchBook): SomeHandlers<DocumentRoute> {
  const { newest, version, versions, all } = book.documents;
  const launch = (id: string, found: KeptDocument | null): KeptLaunch => {
    if (found === null || found.kind !== 'launch') throw unknown('launch', id);
    return launchOf(found);
  };
  const part = (id: string, found: KeptDocument | null): KeptPart => {
    if (found === null || !isPart(found)) throw unknown('part', id);
    return partOf(found);
  };
  return {
    launches: () => ({ launches: all(['launch']).map(summaryOf) }),
    launch: ({ parameters: { id } }) => launch(id, newest(id)),
    launchVersion: ({ parameters: { id, version: which } }) => launch(id, version(id, numberIn(which))),
    launchVersions({ parameters: { id } }) {
      launch(id, newest(id));
      return { id, versions: versions(id).map(factsOf) };
    },
    writeLaunch: ({ parameters: { id }, request }) =>
      launch(id, keep(book, { ...request, id, kind: 'launch', name: readableName('launch', request.text) })),

    parts: () => ({ parts: all(partKinds).filter(isPart).map(partOf).sort(byKindAndName) }),
    part: ({ parameters: { id } }) => part(id, newest(id)),
    partVersion: ({ parameters: { id, version: which } }) => part(id, version(id, numberIn(which))),
    partVersions({ parameters: { id } }) {
      const { kind } = part(id, newest(id));
      return { id, kind, versions: versions(id).map(factsOf) };
    },
    writePart: ({ parameters: { id }, request }) =>
      part(id, keep(book, { ...request, id, name: readableName(request.kind, request.text) })),

    settings: () => settingsOf(newest(settingsId)),
    writeSettings({ request: { write, base, settings } }) {
      const text = JSON.stringify(settings);
      const name = readableName('settings', text);
      const kept = keep(book, {
        write,
        base,
        id: settingsId,
        kind: 'settings',
        text,
        name,
        putAway: false,
        invented: false,
      });
      return settingsOf(kept);
    },
  };
}

/** @throws {Declined} with what the book holds if it has moved on */
function keep(book: BenchBook, wanted: DocumentWrite): KeptDocument {
  const outcome = book.write(wanted);
  switch (outcome.kind) {
    case 'kept':
      return outcome.document;
    case 'stale':
      throw new Declined(
        'stale',
        {
          where: `${wanted.kind} ${wanted.id}`,
          what:
            outcome.current === null
              ? 'the bench book has nothing by this name'
              : `the bench book has version ${outcome.current.version} by now, and this changes version ${wanted.base}`,
          mend: 'Look at what is there now, and change that.',
        },
        currentOf(outcome.current),
      );
    case 'taken':
      throw new Declined('refused', {
        where: `${wanted.kind} ${wanted.id}`,
        what: 'this name, or the name of this write, means something else in the bench book',
        mend: 'Send it under a new name.',
      });
  }
}

function currentOf(document: KeptDocument | null): NonNullable<RefusedAnswer['current']> | null {
  if (document === null) return null;
  if (isPart(document)) return partOf(document);
  return document.kind === 'launch' ? launchOf(document) : settingsOf(document);
}

const numberIn = (text: string): number => (/^[1-9]\d{0,8}$/u.test(text) ? Number(text) : 0);

const byKindAndName = (a: KeptPart, b: KeptPart): number =>
  partKinds.indexOf(a.kind) - partKinds.indexOf(b.kind) ||
  a.name.localeCompare(b.name, 'en') ||
  (a.id < b.id ? -1 : 1);

const unknown = (what: string, id: string): Declined =>
  new Declined('unknown', {
    where: `${what} ${id.slice(0, 100)}`,
    what: `there is no such ${what}, or no such version of it`,
    mend: 'Choose one that is there.',
  });
