import type { KeptLaunch, KeptPart, KeptSettings, LaunchSummary } from '@coreward/contract';
import type { HeldLaunch, KeepingState } from './state.ts';

/** What was heard from the station is taken unless something newer is known already. */
export function withLaunch(state: KeepingState, launch: KeptLaunch): Partial<KeepingState> {
  const known = state.launches.get(launch.id);
  if (known !== undefined && known.version > launch.version) return {};
  return { launches: new Map(state.launches).set(launch.id, launch) };
}

export function withPart(state: KeepingState, part: KeptPart): Partial<KeepingState> {
  const known = state.parts.get(part.id);
  if (known !== undefined && known.version > part.version) return {};
  return { parts: new Map(state.parts).set(part.id, part) };
}

export function withSettings(state: KeepingState, settings: KeptSettings): Partial<KeepingState> {
  return state.settings.version > settings.version ? {} : { settings };
}

/** The whole list of launches; texts of versions that are known stay. */
export function withLaunches(state: KeepingState, launches: readonly LaunchSummary[]): Partial<KeepingState> {
  const held = launches.map((summary): [string, HeldLaunch] => {
    const known = state.launches.get(summary.id);
    const text = known?.version === summary.version ? known.text : null;
    return [
      summary.id,
      known !== undefined && known.version > summary.version ? known : { ...summary, text },
    ];
  });
  return { launches: new Map(held) };
}

export function withParts(state: KeepingState, parts: readonly KeptPart[]): Partial<KeepingState> {
  const held = parts.map((part): [string, KeptPart] => {
    const known = state.parts.get(part.id);
    return [part.id, known !== undefined && known.version > part.version ? known : part];
  });
  return { parts: new Map(held) };
}
