import { type Remote, transfer, wrap } from 'comlink';
import { useEffect, useMemo, useRef } from 'react';
import type { CameraWorker } from './protocol.ts';

/** A worker that looks at pictures; it is started with the first. */
export function useCameraWorker(): CameraWorker {
  const running = useRef<{ readonly worker: Worker; readonly remote: Remote<CameraWorker> } | null>(null);
  useEffect(
    () => () => {
      running.current?.worker.terminate();
      running.current = null;
    },
    [],
  );
  return useMemo(() => {
    const remote = (): Remote<CameraWorker> => {
      if (running.current === null) {
        const worker = new Worker(new URL('./camera-worker.ts', import.meta.url), { type: 'module' });
        running.current = { worker, remote: wrap<CameraWorker>(worker) };
      }
      return running.current.remote;
    };
    return {
      meter: (bitmap, aim, dark) => remote().meter(transfer(bitmap, [bitmap]), aim, dark),
      spot: (bitmap) => remote().spot(transfer(bitmap, [bitmap])),
      spotInFile: (file) => remote().spotInFile(file),
      file: (bitmap, region, name) => remote().file(transfer(bitmap, [bitmap]), region, name),
    };
  }, []);
}
