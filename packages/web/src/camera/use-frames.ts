import { type RefObject, useEffect, useRef } from 'react';

/** One picture of a stream, not yet looked at: its pixels stay out of the page. */
export interface CameraFrame {
  readonly bitmap: ImageBitmap;
  /** When it was shown, ms on the page's own clock. */
  readonly at: number;
}

/**
 * Hands out each picture that a video shows, one at a time: what comes while the last is worked on is passed over.
 *
 * @param look gets the picture and closes it or gives it away; null: nobody looks
 */
export function useFrames(
  video: RefObject<HTMLVideoElement | null>,
  isOn: boolean,
  look: ((frame: CameraFrame) => Promise<void>) | null,
): void {
  const looking = useRef(look);
  looking.current = look;
  useEffect(() => {
    const element = video.current;
    if (element === null || !isOn) return;
    let left = false;
    let handle = 0;
    const next = (): void => {
      if (!left) handle = element.requestVideoFrameCallback((now) => void shown(now));
    };
    const shown = async (at: number): Promise<void> => {
      const own = looking.current;
      if (own !== null && element.videoWidth > 0) {
        try {
          await own({ bitmap: await createImageBitmap(element), at });
        } catch {
          // a video that is just closing has no picture; the next one, or none, tells
        }
      }
      next();
    };
    next();
    return () => {
      left = true;
      element.cancelVideoFrameCallback(handle);
    };
  }, [video, isOn]);
}
