import { useEffect, useState } from 'react';
import { useKeeping } from './use-keeping.ts';
import { versionOf } from './versions.ts';

/** The launch as it stood in one of its versions, whatever has become of it; null: it is asked for, or none is wanted. */
export function useVersion(launch: string, version: number | null): string | null {
  const { world } = useKeeping();
  const [found, setFound] = useState<{ readonly version: number; readonly text: string } | null>(null);
  useEffect(() => {
    if (version === null) return;
    let left = false;
    versionOf(world, { kind: 'launch', id: launch }, version).then(
      ({ text }) => {
        if (!left) setFound({ version, text });
      },
      () => {},
    );
    return () => {
      left = true;
    };
  }, [world, launch, version]);
  return found !== null && found.version === version ? found.text : null;
}
