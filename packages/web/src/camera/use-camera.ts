import { useCallback, useEffect, useRef, useState } from 'react';
import {
  type CameraChoice,
  type CameraLack,
  type CameraUse,
  camerasThere,
  openCamera,
} from './open-camera.ts';
import { type ExposureTime, exposureOf, type Hold, holdSettings, setExposure } from './settings-held.ts';

/** How it stands with the camera. */
export type CameraState =
  | { readonly kind: 'closed' | 'opening' }
  | { readonly kind: 'lack'; readonly lack: CameraLack }
  | {
      readonly kind: 'open';
      readonly stream: MediaStream;
      /** Null until they were asked. */
      readonly holds: readonly Hold[] | null;
      readonly exposure: ExposureTime | null;
    };

export interface Camera {
  readonly state: CameraState;
  readonly choices: readonly CameraChoice[];
  /** The one that is open or was asked for; null: nobody chose. */
  readonly chosen: string | null;
  readonly open: (id?: string) => void;
  readonly close: () => void;
  readonly expose: (time: number) => Promise<void>;
}

/** A camera of this device: opened by a press, let go with the page. */
export function useCamera(use: CameraUse): Camera {
  const [state, setState] = useState<CameraState>({ kind: 'closed' });
  const [choices, setChoices] = useState<readonly CameraChoice[]>([]);
  const [chosen, setChosen] = useState<string | null>(null);
  const held = useRef<MediaStream | null>(null);
  const turn = useRef(0);

  const letGo = useCallback((): void => {
    turn.current += 1;
    for (const track of held.current?.getTracks() ?? []) track.stop();
    held.current = null;
  }, []);
  useEffect(() => letGo, [letGo]);

  const open = useCallback(
    (id?: string): void => {
      letGo();
      const own = turn.current;
      const devices = navigator.mediaDevices as MediaDevices | undefined;
      setState({ kind: 'opening' });
      void openCamera(devices, id ?? null, use).then(async (opened) => {
        if (own !== turn.current) {
          if (opened.kind === 'open') opened.track.stop();
          return;
        }
        if (opened.kind === 'lack') {
          setState(opened);
          return;
        }
        const { stream, track } = opened;
        held.current = stream;
        track.addEventListener('ended', () => {
          if (own === turn.current) setState({ kind: 'lack', lack: 'lost' });
        });
        setChosen(track.getSettings().deviceId ?? id ?? null);
        setState({ kind: 'open', stream, holds: null, exposure: null });
        setChoices(await camerasThere(devices));
        const holds = await holdSettings(track);
        if (own === turn.current) setState({ kind: 'open', stream, holds, exposure: exposureOf(track) });
      });
    },
    [letGo, use],
  );

  const close = useCallback((): void => {
    letGo();
    setState({ kind: 'closed' });
  }, [letGo]);

  const expose = useCallback(async (time: number): Promise<void> => {
    const own = turn.current;
    const [track] = held.current?.getVideoTracks() ?? [];
    if (track === undefined) return;
    await setExposure(track, time);
    if (own !== turn.current) return;
    setState((now) => (now.kind === 'open' ? { ...now, exposure: exposureOf(track) } : now));
  }, []);

  return { state, choices, chosen, open, close, expose };
}
