import {
  type KeptEntry,
  type KeptLaunch,
  type KeptPart,
  type KeptSettings,
  type LaunchSummary,
  type LiveMessage,
  type PartKind,
  settingsAtFirst,
} from '@coreward/contract';
import type { BookEntry, Change, KeptDocument } from '../bench-book/kept-document.ts';

type PartDocument = KeptDocument & { readonly kind: PartKind };

/** Whether a document is a part of the drawer. */
export const isPart = (document: KeptDocument): document is PartDocument =>
  document.kind !== 'launch' && document.kind !== 'settings';

/** A version of a document without its text. */
export const factsOf = ({ version, changed, name, putAway, invented }: KeptDocument) => ({
  version,
  changed,
  name,
  putAway,
  invented,
});

/** A launch in a list. */
export const summaryOf = (document: KeptDocument): LaunchSummary => ({
  id: document.id,
  ...factsOf(document),
});

/** A launch as a page is told it. */
export const launchOf = (document: KeptDocument): KeptLaunch => ({
  id: document.id,
  ...factsOf(document),
  text: document.text,
});

/** A part as a page is told it. */
export const partOf = (document: PartDocument): KeptPart => ({
  id: document.id,
  kind: document.kind,
  ...factsOf(document),
  text: document.text,
});

/** The settings as a page is told them; null: nothing was ever set. */
export const settingsOf = (document: KeptDocument | null): KeptSettings =>
  document === null
    ? { version: 0, changed: null, settings: settingsAtFirst }
    : { version: document.version, changed: document.changed, settings: JSON.parse(document.text) };

/** An entry as a page is told it. */
export const entryOf = (entry: BookEntry): KeptEntry => ({ ...entry, data: JSON.parse(entry.data) });

/** A change as the pages are told it. */
export function messageOf(change: Change): LiveMessage {
  const { sequence, write } = change;
  if (change.subject === 'entry') return { type: 'entry', sequence, write, entry: entryOf(change.entry) };
  const { document } = change;
  if (isPart(document)) return { type: 'part', sequence, write, part: partOf(document) };
  return document.kind === 'launch'
    ? { type: 'launch', sequence, write, launch: launchOf(document) }
    : { type: 'settings', sequence, write, settings: settingsOf(document) };
}
