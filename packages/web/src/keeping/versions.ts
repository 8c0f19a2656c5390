import { type KeptLaunch, type KeptPart, routes } from '@coreward/contract';
import type { Thing } from './change.ts';
import { ask } from './client.ts';
import type { World } from './world.ts';

/** What has versions to look back at. */
export type Versioned = Exclude<Thing, { kind: 'settings' }>;

/** A launch or a part in one of its versions. */
export type KeptVersion = KeptLaunch | KeptPart;

/** One version as the bench book holds it; it never changes. */
export function versionOf(
  world: World,
  { kind, id }: Pick<Versioned, 'kind' | 'id'>,
  version: number,
): Promise<KeptVersion> {
  const which = { id, version: `${version}` };
  return kind === 'launch'
    ? ask(world, routes.launchVersion, which, null)
    : ask(world, routes.partVersion, which, null);
}

/**
 * All versions up to the newest, newest first.
 *
 * @param known what was fetched before, by id and version; what is fetched now is added
 * @param left whether nobody waits any longer
 */
export async function versionsOf(
  world: World,
  thing: Pick<Versioned, 'kind' | 'id'>,
  newest: number,
  known: Map<string, KeptVersion>,
  left: () => boolean,
): Promise<readonly KeptVersion[]> {
  const all: KeptVersion[] = [];
  // they are counted from 1 without a gap
  for (let version = newest; version > 0 && !left(); version -= 1) {
    const key = `${thing.id} ${version}`;
    const one = known.get(key) ?? (await versionOf(world, thing, version));
    known.set(key, one);
    all.push(one);
  }
  return all;
}
