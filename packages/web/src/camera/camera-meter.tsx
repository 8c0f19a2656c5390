import {
  cameraWords,
  noFigures,
  noiseOf,
  type PictureSize,
  type Region,
  type RunningFigures,
  rateOf,
  rateWords,
  withReading,
} from '@coreward/bench';
import { type JSX, useEffect, useRef, useState } from 'react';
import type { PosterProps } from '../instrument/kind-parts.ts';
import { cameraTexts } from '../texts/camera.ts';
import { CameraLevels } from './camera-levels.tsx';
import { CameraView } from './camera-view.tsx';
import type { AimAsked, DarkAsked, MeterTold } from './protocol.ts';
import { RegionOver } from './region-over.tsx';
import { useCamera } from './use-camera.ts';
import { useCameraWorker } from './use-camera-worker.ts';
import { type CameraFrame, useFrames } from './use-frames.ts';
import { usePosting } from './use-posting.ts';

const words = cameraTexts.meter;

/** The page is drawn anew so often, ms, however fast the camera is. */
const showEvery = 100;

/** A file has no time of its own: it is taken to come so long after what came before, ms. */
const betweenFiles = 1000;

/** What is shown of the newest reading. */
interface Shown {
  readonly told: MeterTold;
  readonly figures: RunningFigures;
}

/** How far the dark frame is: not wanted, being taken, taken. */
type DarkState = 'none' | 'taking' | 'done';

/** A camera as a meter of relative power, its readings sent as they come. */
export function CameraMeter({ held }: PosterProps): JSX.Element {
  const camera = useCamera('live');
  const worker = useCameraWorker();
  const video = useRef<HTMLVideoElement>(null);
  const posting = usePosting(held.post);
  const aim = useRef<AimAsked>({ by: 'brightest' });
  const dark = useRef<DarkState>('none');
  const darkAsked = useRef<DarkAsked>('none');
  const figures = useRef(noFigures);
  /** When the newest picture was taken, and the one that is shown; by the page's own clock. */
  const lastAt = useRef(0);
  const lastShown = useRef<number | null>(null);
  const [shown, setShown] = useState<Shown | null>(null);
  // the region under the finger, until a picture tells of it
  const [aimed, setAimed] = useState<Region | null>(null);
  const [darkState, setDarkState] = useState<DarkState>('none');
  const [wasLit, setWasLit] = useState(false);
  const [fault, setFault] = useState<string | null>(null);

  const hear = (told: MeterTold, at: number): void => {
    lastAt.current = at;
    // where it looks is settled by the first light that is seen there
    if (aim.current.by !== 'aim' && told.reading.kind !== 'dark') aim.current = { by: 'aim', aim: told.aim };
    if (dark.current === 'taking') {
      darkAsked.current = told.darkIsDone ? 'keep' : 'more';
      if (told.darkIsDone) {
        setDark('done');
        setWasLit(told.wasLit);
        figures.current = noFigures;
      }
    } else {
      const { value, kind } = told.reading;
      const saturated = kind === 'clipped';
      figures.current = withReading(figures.current, { t: at, value, saturated });
      posting.push({ at, value, saturated });
    }
    if (lastShown.current !== null && at - lastShown.current < showEvery) return;
    lastShown.current = at;
    setAimed(null);
    setShown({ told, figures: figures.current });
  };
  const look = async ({ bitmap, at }: CameraFrame): Promise<void> => {
    try {
      const asked = { aim: aim.current, dark: darkAsked.current };
      const told = await worker.meter(bitmap, asked.aim, asked.dark);
      // it was asked otherwise meanwhile: what was told of the region or the dark frame before is not of this one
      if (asked.aim === aim.current && asked.dark === darkAsked.current) hear(told, at);
      setFault(null);
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  };
  const isOpen = camera.state.kind === 'open';
  useFrames(video, isOpen, look);
  const ending = useRef(posting.end);
  ending.current = posting.end;
  useEffect(() => {
    if (!isOpen) return;
    return () => {
      figures.current = noFigures;
      ending.current(lastAt.current);
    };
  }, [isOpen]);

  const setDark = (state: DarkState): void => {
    dark.current = state;
    setDarkState(state);
  };
  const aimAnew = (asked: AimAsked): void => {
    aim.current = asked;
    setAimed(asked.by === 'region' ? asked.region : null);
    figures.current = noFigures;
  };
  return (
    <div className="camera-meter">
      <p className="quiet">{words.intro}</p>
      <CameraView
        camera={camera}
        video={video}
        onFile={(file) => {
          void createImageBitmap(file, { colorSpaceConversion: 'none' }).then(
            (bitmap) => look({ bitmap, at: lastAt.current + betweenFiles }),
            (error: unknown) => setFault(error instanceof Error ? error.message : String(error)),
          );
        }}
        over={(size: PictureSize) => (
          <RegionOver
            size={size}
            region={aimed ?? shown?.told.aim.region ?? null}
            onRegion={(region) => aimAnew({ by: 'region', region })}
          />
        )}
      >
        <p className="quiet">{cameraTexts.regionHint}</p>
        <p className="choices">
          <button type="button" onClick={() => aimAnew({ by: 'brightest' })}>
            {words.brightest}
          </button>
          <button
            type="button"
            disabled={darkState === 'taking'}
            onClick={() => {
              darkAsked.current = 'begin';
              setWasLit(false);
              setDark('taking');
            }}
          >
            {words.dark}
          </button>
          {darkState === 'done' && (
            <button
              type="button"
              className="quiet-button"
              onClick={() => {
                darkAsked.current = 'none';
                figures.current = noFigures;
                setDark('none');
              }}
            >
              {words.darkForget}
            </button>
          )}
        </p>
        <p className="quiet" role="status">
          {darkState === 'none' ? words.darkHint : darkState === 'taking' ? words.darkTaking : words.darkDone}
        </p>
        {wasLit && (
          <p className="refusal" role="alert">
            {words.wasLit}
          </p>
        )}
      </CameraView>
      {shown !== null && darkState !== 'taking' && (
        <ReadingNow shown={shown} hasDark={darkState === 'done'} />
      )}
      {posting.trouble !== null && (
        <p className="refusal" role="alert">
          {words.notSent(posting.trouble)}
        </p>
      )}
      {fault !== null && (
        <p className="refusal" role="alert">
          {cameraTexts.fault} <code>{fault}</code>
        </p>
      )}
      <CameraLevels value={shown?.told.reading.kind === 'light' ? shown.told.reading.value : null} />
    </div>
  );
}

/** The newest reading: its figure, what scatters it, or why there is none. */
function ReadingNow({
  shown: { told, figures },
  hasDark,
}: {
  readonly shown: Shown;
  readonly hasDark: boolean;
}): JSX.Element {
  const { value, noise, refused, remarks, kind } = cameraWords(told.reading, noiseOf(figures), hasDark);
  const rate = rateOf(figures);
  return (
    <>
      {value !== null && (
        <p className="camera-reading">
          <strong>{value}</strong>
          <span className="quiet">
            {words.now}
            {noise !== null && `, ${words.noise(noise)}`}
            {rate !== null && `, ${rateWords(rate)}`}
          </span>
        </p>
      )}
      <div role="status">
        {kind === 'dark' && <p className="advice">{hasDark ? words.isDark : words.isDarkBefore}</p>}
        {refused !== null && (
          <p className="refusal">
            {refused.what}. {refused.mend}
          </p>
        )}
      </div>
      {remarks.length > 0 && (
        <ul className="quiet">
          {remarks.map((remark) => (
            <li key={remark}>{remark}</li>
          ))}
        </ul>
      )}
    </>
  );
}
