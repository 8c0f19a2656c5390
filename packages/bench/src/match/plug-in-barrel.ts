import { mates } from '@coreward/optics';
import { matingText } from '../forecast/remarks-parts.ts';
import type { Launch } from '../launch/launch.ts';
import type { PlugInBarrel } from './matched.ts';

/** Whether the fibre's plug goes into the collimator's barrel, with a word where it needs attention. */
export function plugInBarrel({ collimator, fibre }: Launch): {
  readonly how: PlugInBarrel;
  readonly note: string | null;
} {
  const barrel = collimator?.connector ?? null;
  const plug = fibre.connectors.in;
  if (barrel === null || plug === null) return { how: 'unknown', note: null };
  const note = matingText(plug, barrel);
  switch (mates(plug, barrel).kind) {
    case 'sleeve':
      return { how: note === null ? 'fits' : 'needs an adapter', note };
    case 'adapter':
      return { how: 'needs an adapter', note };
    case 'never':
      return { how: 'must not meet', note };
  }
}
