import {
  draggedRegion,
  type PictureSize,
  type PlaceOnPicture,
  type Region,
  type RegionKey,
  regionAfterKey,
} from '@coreward/bench';
import { type JSX, type KeyboardEvent, type PointerEvent, useState } from 'react';
import { cameraTexts } from '../texts/camera.ts';

interface RegionOverProps {
  readonly size: PictureSize;
  readonly region: Region | null;
  readonly onRegion: (region: Region) => void;
}

const keys: Readonly<Record<string, RegionKey>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};
const shiftKeys: Readonly<Record<string, RegionKey>> = {
  ArrowLeft: 'narrower',
  ArrowRight: 'wider',
  ArrowUp: 'higher',
  ArrowDown: 'lower',
};

/** Where on an element a pointer is, as shares of it. */
export function placeOf({ clientX, clientY, currentTarget }: PointerEvent): PlaceOnPicture {
  const { left, top, width, height } = currentTarget.getBoundingClientRect();
  return { x: (clientX - left) / width, y: (clientY - top) / height };
}

/** The region over a picture: dragged by a finger, moved and sized by keys. */
export function RegionOver({ size, region, onRegion }: RegionOverProps): JSX.Element {
  const [from, setFrom] = useState<PlaceOnPicture | null>(null);
  const { width, height } = size;
  const press = (event: KeyboardEvent): void => {
    const key = (event.shiftKey ? shiftKeys : keys)[event.key];
    if (key === undefined || region === null) return;
    event.preventDefault();
    onRegion(regionAfterKey(region, key, size));
  };
  return (
    <svg
      className="camera-over"
      viewBox={`0 0 ${width} ${height}`}
      // biome-ignore lint/a11y/noNoninteractiveTabindex: the region is moved by keys
      tabIndex={0}
      role="application"
      aria-label={cameraTexts.regionLabel(
        region === null
          ? cameraTexts.whole
          : cameraTexts.regionText(region.x, region.y, region.width, region.height),
      )}
      onKeyDown={press}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        setFrom(placeOf(event));
      }}
      onPointerMove={(event) => {
        if (from !== null) onRegion(draggedRegion(from, placeOf(event), size));
      }}
      onPointerUp={() => setFrom(null)}
      onPointerCancel={() => setFrom(null)}
    >
      {region !== null && (
        <>
          <path
            className="camera-shade"
            d={`M0 0H${width}V${height}H0ZM${region.x} ${region.y}v${region.height}h${region.width}v${-region.height}Z`}
          />
          <rect
            className="camera-region"
            x={region.x}
            y={region.y}
            width={region.width}
            height={region.height}
          />
        </>
      )}
    </svg>
  );
}
