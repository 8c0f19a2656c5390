/** A part of a camera's picture, upright, in whole pixels; x right, y down. */
export interface Region {
  /** Of its first pixel. */
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** Pixels of a picture. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** A place on the picture as a share of its width and height, 0 to 1. */
export interface PlaceOnPicture {
  readonly x: number;
  readonly y: number;
}

/** A region is at least so many pixels wide and high. */
const leastSide = 4;

/** The square about a place, as far as it lies in the picture. */
export function regionAround(x: number, y: number, half: number, size: PictureSize): Region {
  return within(x - half, y - half, x + half + 1, y + half + 1, size);
}

/** The whole picture. */
export const wholePicture = ({ width, height }: PictureSize): Region => ({ x: 0, y: 0, width, height });

/** What a finger spans from one place to another. */
export function draggedRegion(from: PlaceOnPicture, to: PlaceOnPicture, size: PictureSize): Region {
  const { width, height } = size;
  return within(
    Math.min(from.x, to.x) * width,
    Math.min(from.y, to.y) * height,
    Math.max(from.x, to.x) * width,
    Math.max(from.y, to.y) * height,
    size,
  );
}

/** What a key does to a region: moves it, or makes it wider, narrower, higher, lower. */
export type RegionKey = 'left' | 'right' | 'up' | 'down' | 'wider' | 'narrower' | 'higher' | 'lower';

/** A key's step, as a share of the picture's longer side. */
const keyStep = 1 / 64;

/** A region after a key; at the picture's edge it stays whole. */
export function regionAfterKey(region: Region, key: RegionKey, size: PictureSize): Region {
  const step = Math.max(1, Math.round(keyStep * Math.max(size.width, size.height)));
  const { x, y, width, height } = region;
  const moved = (dx: number, dy: number): Region => ({
    ...region,
    x: Math.min(Math.max(0, x + dx), size.width - width),
    y: Math.min(Math.max(0, y + dy), size.height - height),
  });
  switch (key) {
    case 'left':
      return moved(-step, 0);
    case 'right':
      return moved(step, 0);
    case 'up':
      return moved(0, -step);
    case 'down':
      return moved(0, step);
    case 'wider':
      return within(x - step, y, x + width + step, y + height, size);
    case 'narrower':
      return shrunk(region, step, 0);
    case 'higher':
      return within(x, y - step, x + width, y + height + step, size);
    case 'lower':
      return shrunk(region, 0, step);
  }
}

function shrunk(region: Region, across: number, down: number): Region {
  const { x, y, width, height } = region;
  const [byX, byY] = [
    Math.min(across, Math.max(0, (width - leastSide) >> 1)),
    Math.min(down, Math.max(0, (height - leastSide) >> 1)),
  ];
  return { x: x + byX, y: y + byY, width: width - 2 * byX, height: height - 2 * byY };
}

/** From edge to edge in whole pixels, cut at the picture's, and no smaller than can be seen. */
function within(left: number, top: number, right: number, bottom: number, size: PictureSize): Region {
  const along = (from: number, to: number, most: number): readonly [number, number] => {
    const first = Math.min(Math.max(0, Math.floor(from)), Math.max(0, most - leastSide));
    const last = Math.min(most, Math.max(Math.ceil(to), first + leastSide));
    return [first, last - first];
  };
  const [x, width] = along(left, right, size.width);
  const [y, height] = along(top, bottom, size.height);
  return { x, y, width, height };
}
