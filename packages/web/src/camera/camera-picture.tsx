import type { PictureSize, Region } from '@coreward/bench';
import { type JSX, type ReactNode, type RefObject, useRef, useState } from 'react';
import { cameraTexts } from '../texts/camera.ts';
import { CameraView } from './camera-view.tsx';
import { RegionOver } from './region-over.tsx';
import { useCamera } from './use-camera.ts';
import { useCameraWorker } from './use-camera-worker.ts';

/** A camera's view with a region on it, from which pictures are taken as files. */
function useTaking() {
  const camera = useCamera('picture');
  const worker = useCameraWorker();
  const video = useRef<HTMLVideoElement>(null);
  const [region, setRegion] = useState<Region | null>(null);
  const [busy, setBusy] = useState(false);
  const [fault, setFault] = useState<string | null>(null);
  const count = useRef(0);
  const take = async (onPicture: (file: File) => void): Promise<void> => {
    if (video.current === null || busy) return;
    setBusy(true);
    try {
      count.current += 1;
      const name = cameraTexts.pictureName(count.current);
      onPicture(await worker.file(await createImageBitmap(video.current), region, name));
      setFault(null);
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
    setBusy(false);
  };
  return { camera, video, region, setRegion, busy, fault, take };
}

/** One picture of the camera, or of a region of it. */
export function CameraPicture({ onPicture }: { readonly onPicture: (file: File) => void }): JSX.Element {
  const taking = useTaking();
  return (
    <Taking taking={taking}>
      <button
        type="button"
        className="act"
        disabled={taking.busy}
        onClick={() => void taking.take(onPicture)}
      >
        {taking.busy ? cameraTexts.taking : cameraTexts.take}
      </button>
    </Taking>
  );
}

/** A picture of each of two beams by one camera that stays where it is; both have the same region. */
export function CameraPair({
  onPicture,
}: {
  readonly onPicture: (file: File, beam: 'forward' | 'reverse') => void;
}): JSX.Element {
  const taking = useTaking();
  return (
    <Taking taking={taking}>
      {(['forward', 'reverse'] as const).map((beam) => (
        <button
          key={beam}
          type="button"
          disabled={taking.busy}
          onClick={() => void taking.take((file) => onPicture(file, beam))}
        >
          {cameraTexts.takeBeam[beam]}
        </button>
      ))}
    </Taking>
  );
}

function Taking({
  taking: { camera, video, region, setRegion, fault },
  children,
}: {
  readonly taking: ReturnType<typeof useTaking>;
  readonly children: ReactNode;
}): JSX.Element {
  return (
    <CameraView
      camera={camera}
      video={video as RefObject<HTMLVideoElement | null>}
      onFile={null}
      over={(size: PictureSize) => <RegionOver size={size} region={region} onRegion={setRegion} />}
    >
      <p className="quiet">{cameraTexts.regionHint}</p>
      <p className="choices">
        {children}
        {region !== null && (
          <button type="button" className="quiet-button" onClick={() => setRegion(null)}>
            {cameraTexts.whole}
          </button>
        )}
      </p>
      {fault !== null && (
        <p className="refusal" role="alert">
          {cameraTexts.fault} <code>{fault}</code>
        </p>
      )}
    </CameraView>
  );
}
