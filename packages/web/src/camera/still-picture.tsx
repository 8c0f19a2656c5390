import type { PictureSize } from '@coreward/bench';
import { type JSX, type ReactNode, useEffect, useRef, useState } from 'react';
import { cameraTexts } from '../texts/camera.ts';

/** A picture from a file, shown by the browser itself; null: it shows none such. */
export function StillPicture({
  file,
  over,
}: {
  readonly file: File;
  readonly over: (size: PictureSize) => ReactNode;
}): JSX.Element {
  const canvas = useRef<HTMLCanvasElement>(null);
  const [size, setSize] = useState<PictureSize | null>(null);
  useEffect(() => {
    let left = false;
    createImageBitmap(file, { colorSpaceConversion: 'none' }).then(
      (bitmap) => {
        const element = canvas.current;
        if (left || element === null) return;
        const { width, height } = bitmap;
        element.width = width;
        element.height = height;
        // handed over as it is: no pixel of it is read on the page
        element.getContext('bitmaprenderer')?.transferFromImageBitmap(bitmap);
        setSize({ width, height });
      },
      // what cannot be shown is refused where it is measured
      () => {},
    );
    return () => {
      left = true;
    };
  }, [file]);
  return (
    <div className="camera-preview">
      <canvas ref={canvas} role="img" aria-label={cameraTexts.still(file.name)} />
      {size !== null && over(size)}
    </div>
  );
}
