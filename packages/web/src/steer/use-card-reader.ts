import { type CardSpot, type CardSpotRead, type MeanSpot, meanSpot } from '@coreward/bench';
import { type RefObject, useRef, useState } from 'react';
import { useCameraWorker } from '../camera/use-camera-worker.ts';
import { type CameraFrame, useFrames } from '../camera/use-frames.ts';

/** Pictures that a kept spot is the mean of: half a second of a webcam, in which a fibre that is moved shows its wander. */
const picturesToKeep = 12;
/** The page is drawn anew so often, ms, however fast the camera is. */
const showEvery = 100;

export interface CardReader {
  /** What the newest picture shows; null before there is one. */
  readonly live: CardSpotRead | null;
  /** Pictures taken so far of those a spot is to be the mean of; null: none are being taken. */
  readonly taken: number | null;
  readonly of: number;
  /** Takes the mean of the spot over the next pictures in which there is one. */
  readonly take: (then: (mean: MeanSpot) => void) => void;
  readonly stop: () => void;
  readonly inFile: ReturnType<typeof useCameraWorker>['spotInFile'];
  readonly fault: string | null;
}

/** Finds the spot on a card in every picture of a camera. */
export function useCardReader(video: RefObject<HTMLVideoElement | null>, isOpen: boolean): CardReader {
  const worker = useCameraWorker();
  const [live, setLive] = useState<CardSpotRead | null>(null);
  const [taken, setTaken] = useState<number | null>(null);
  const [fault, setFault] = useState<string | null>(null);
  const taking = useRef<{ readonly spots: CardSpot[]; readonly then: (mean: MeanSpot) => void } | null>(null);
  const lastShown = useRef<number | null>(null);
  const hear = (read: CardSpotRead, at: number): void => {
    const own = taking.current;
    if (own !== null && read.kind === 'spot') {
      own.spots.push(read.spot);
      const [first, ...others] = own.spots;
      if (first !== undefined && own.spots.length >= picturesToKeep) {
        taking.current = null;
        setTaken(null);
        own.then(meanSpot([first, ...others]));
      }
    }
    if (lastShown.current !== null && at - lastShown.current < showEvery) return;
    lastShown.current = at;
    setLive(read);
    if (taking.current !== null) setTaken(taking.current.spots.length);
  };
  const look = async ({ bitmap, at }: CameraFrame): Promise<void> => {
    try {
      hear(await worker.spot(bitmap), at);
      setFault(null);
    } catch (error) {
      setFault(error instanceof Error ? error.message : String(error));
    }
  };
  useFrames(video, isOpen, look);
  return {
    live: isOpen ? live : null,
    taken,
    of: picturesToKeep,
    take: (then) => {
      taking.current = { spots: [], then };
      setTaken(0);
    },
    stop: () => {
      taking.current = null;
      setTaken(null);
    },
    inFile: worker.spotInFile,
    fault,
  };
}
