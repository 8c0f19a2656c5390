import { useSyncExternalStore } from 'react';
import { useKeeping } from '../keeping/use-keeping.ts';

/**
 * Whether this device came by the network and is not let in, or no longer. A page of the station's own computer that is not
 * known only needs to be loaded again.
 */
export function useStranger(): boolean {
  const keeping = useKeeping();
  return useSyncExternalStore(
    keeping.subscribe,
    () => keeping.get().connection === 'unpaired' && window.location.protocol === 'https:',
  );
}
