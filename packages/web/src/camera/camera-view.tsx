import type { PictureSize } from '@coreward/bench';
import { type JSX, type ReactNode, type RefObject, useEffect, useId, useState } from 'react';
import { cameraTexts } from '../texts/camera.ts';
import type { CameraChoice } from './open-camera.ts';
import { PictureChoice } from './picture-choice.tsx';
import type { ExposureTime, Hold } from './settings-held.ts';
import type { Camera } from './use-camera.ts';
import './camera.css';

interface CameraViewProps {
  readonly camera: Camera;
  readonly video: RefObject<HTMLVideoElement | null>;
  /** A picture chosen instead; null: one file would not do here. */
  readonly onFile: ((file: File) => void) | null;
  /** What lies over the picture, once its size is known. */
  /** Told the size of its pictures as soon as there is one. */
  readonly onSize?: ((size: PictureSize) => void) | undefined;
  readonly over?: ((size: PictureSize) => ReactNode) | undefined;
  readonly children?: ReactNode;
}

/** A camera: opened by a press, what it sees, what it holds still, or why there is none and what does instead. */
export function CameraView({ camera, video, onFile, over, onSize, children }: CameraViewProps): JSX.Element {
  const { state } = camera;
  return (
    <div className="camera">
      {state.kind !== 'open' && (
        <p className="facts">
          <button
            type="button"
            className="act"
            disabled={state.kind === 'opening'}
            onClick={() => camera.open()}
          >
            {cameraTexts.open}
          </button>
          {onFile !== null && (
            <PictureChoice
              words={cameraTexts.fromFile}
              label={cameraTexts.fileLabel}
              onFile={onFile}
              takesNow
            />
          )}
        </p>
      )}
      {state.kind === 'opening' && <p role="status">{cameraTexts.opening}</p>}
      {state.kind === 'lack' && (
        <div className="refusal" role="alert">
          <p>
            {cameraTexts.lacks[state.lack].what} {cameraTexts.lacks[state.lack].mend}
          </p>
        </div>
      )}
      {state.kind === 'open' && (
        <>
          <Preview stream={state.stream} video={video} over={over} onSize={onSize} />
          <p className="facts">
            <CameraChoices camera={camera} />
            <button type="button" className="quiet-button" onClick={camera.close}>
              {cameraTexts.close}
            </button>
          </p>
          {children}
          {state.exposure !== null && <Exposure exposure={state.exposure} onSet={camera.expose} />}
          {state.holds !== null && <Holds holds={state.holds} />}
        </>
      )}
      {state.kind === 'closed' && <p className="quiet">{cameraTexts.stays}</p>}
    </div>
  );
}

function Preview({
  stream,
  video,
  over,
  onSize,
}: Pick<CameraViewProps, 'video' | 'over' | 'onSize'> & { readonly stream: MediaStream }): JSX.Element {
  const [size, setSize] = useState<PictureSize | null>(null);
  useEffect(() => {
    const element = video.current;
    if (element === null) return;
    element.srcObject = stream;
    // a browser that plays nothing until it is touched plays after the press that opened the camera
    element.play().catch(() => {});
    return () => {
      element.srcObject = null;
    };
  }, [stream, video]);
  return (
    <div className="camera-preview">
      {/* a camera has no words to be read along */}
      <video
        ref={video}
        muted
        playsInline
        aria-label={cameraTexts.preview}
        onResize={({ currentTarget: { videoWidth: width, videoHeight: height } }) => {
          setSize(width > 0 ? { width, height } : null);
          if (width > 0) onSize?.({ width, height });
        }}
      />
      {size !== null && over?.(size)}
    </div>
  );
}

function CameraChoices({
  camera: { choices, chosen, open },
}: {
  readonly camera: Camera;
}): JSX.Element | null {
  if (choices.length < 2) return null;
  return (
    <label className="camera-choice">
      {cameraTexts.which}{' '}
      <select value={chosen ?? ''} onChange={({ target }) => open(target.value)}>
        {choices.map(({ id, label }: CameraChoice, rank) => (
          <option key={id} value={id}>
            {label === '' ? cameraTexts.unnamed(rank + 1) : label}
          </option>
        ))}
      </select>
    </label>
  );
}

function Exposure({
  exposure: { least, most, step, now },
  onSet,
}: {
  readonly exposure: ExposureTime;
  readonly onSet: (time: number) => Promise<void>;
}): JSX.Element {
  const id = useId();
  // where the finger is, until the camera has answered
  const [asked, setAsked] = useState<number | null>(null);
  const set = async (time: number): Promise<void> => {
    setAsked(time);
    await onSet(time);
    setAsked((newest) => (newest === time ? null : newest));
  };
  return (
    <p className="camera-exposure">
      <label htmlFor={id}>{cameraTexts.exposure}</label>
      <input
        id={id}
        type="range"
        min={least}
        max={most}
        step={step}
        value={asked ?? now}
        onChange={({ target }) => void set(target.valueAsNumber)}
      />
    </p>
  );
}

const outcomes = ['held', 'refused', 'cannot be asked'] as const satisfies readonly Hold['outcome'][];

/** What a camera holds still, told plainly where it does not. */
function Holds({ holds }: { readonly holds: readonly Hold[] }): JSX.Element {
  const told = outcomes.flatMap((outcome) => {
    const names = holds.filter((one) => one.outcome === outcome);
    return names.length === 0
      ? []
      : [cameraTexts.hold[outcome](names.map(({ name }) => cameraTexts.holdNames[name]).join(', '))];
  });
  return (
    <details className="more camera-holds">
      <summary>
        {cameraTexts.holds}: {told.join('; ')}
      </summary>
      {holds.some(({ outcome }) => outcome !== 'held') && <p>{cameraTexts.drifts}</p>}
    </details>
  );
}
