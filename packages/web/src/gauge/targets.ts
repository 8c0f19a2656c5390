import {
  type DrawerEntry,
  filledIn,
  launchFields,
  type PlaceToFill,
  partFields,
  placesRefused,
  placesToFill,
  placeWords,
  Refusal,
  type RefusedPlace,
  readLaunch,
} from '@coreward/bench';
import { partCheck, partsOf, type ShownPart } from '../drawer/parts.ts';
import type { Thing } from '../keeping/change.ts';
import type { KeepingState } from '../keeping/state.ts';
import { launchesOf, type ShownLaunch } from '../keeping/use-keeping.ts';
import { launchName } from '../start/launch-name.ts';
import { gaugeTexts } from '../texts/gauge.ts';

/** A place of a part or of a launch that an answer may fill. */
export interface Target {
  /** A name of its own among all targets. */
  readonly key: string;
  readonly thing: Exclude<Thing, { kind: 'settings' }>;
  readonly name: string;
  readonly text: string;
  readonly putAway: boolean;
  readonly invented: boolean;
  readonly entry: DrawerEntry;
  readonly place: PlaceToFill;
  /** The place in words: `power of the laser`. */
  readonly told: string;
  /** For a list of all. */
  readonly words: string;
}

/** Where these answers may go: the launches whose text is here and the parts at hand, launches first. */
export function targetsFor(state: KeepingState, entries: readonly DrawerEntry[]): readonly Target[] {
  const launches = launchesOf(state).flatMap(({ id, text, putAway, invented }) =>
    text === null || putAway ? [] : launchTargets({ id, text, putAway, invented }, entries),
  );
  const parts = partsOf(state)
    .filter(({ putAway }) => !putAway)
    .flatMap((part) => partTargets(part, entries));
  return [...launches, ...parts];
}

function launchTargets(launch: ShownLaunch, entries: readonly DrawerEntry[]): readonly Target[] {
  const fields = readable(() => launchFields(launch.text));
  if (fields === null) return [];
  const name = launchName(launch.text);
  return entries.flatMap((entry) =>
    placesToFill(entry, fields, null).map((place) => ({
      key: `launch ${launch.id} ${place.place}`,
      thing: { kind: 'launch' as const, id: launch.id },
      ...launch,
      name,
      entry,
      place,
      told: placeWords(place.place),
      words: gaugeTexts.aLaunch(name, placeWords(place.place)),
    })),
  );
}

function partTargets(part: ShownPart, entries: readonly DrawerEntry[]): readonly Target[] {
  const { id, kind, name, text, putAway, invented } = part;
  const fields = readable(() => partFields({ kind, text }));
  if (fields === null) return [];
  return entries.flatMap((entry) =>
    placesToFill(entry, fields, kind).map((place) => ({
      key: `part ${id} ${place.place}`,
      thing: { kind: 'part' as const, id, part: kind },
      name,
      text,
      putAway,
      invented,
      entry,
      place,
      told: placeWords(place.place),
      words: gaugeTexts.aPart(name, placeWords(place.place)),
    })),
  );
}

/** The document with the answer in it, and what would be refused of that. */
export function withAnswer(
  target: Target,
  beside: string | null,
  state: KeepingState,
): { readonly text: string; readonly refused: readonly RefusedPlace[] } {
  const text = filledIn(target.text, target.place, target.entry, beside);
  const { thing } = target;
  if (thing.kind === 'part') {
    return { text, refused: partCheck(thing.part, partsOf(state), thing.id)(text) };
  }
  try {
    readLaunch(text, 'launch');
    return { text, refused: [] };
  } catch (error) {
    if (error instanceof Refusal) return { text, refused: placesRefused(error) };
    throw error;
  }
}

function readable<T>(read: () => T): T | null {
  try {
    return read();
  } catch (error) {
    if (error instanceof Refusal) return null;
    throw error;
  }
}
