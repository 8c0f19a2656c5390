import {
  aimAt,
  aimAtBrightest,
  type CameraAim,
  type CameraDark,
  type CameraReading,
  cameraReading,
  cardSpot,
  darkPictures,
  isHardlyDarker,
  type Picture,
  pictureOfFrame,
  Refusal,
  withDarkPicture,
} from '@coreward/bench';
import { expose } from 'comlink';
import { openPicture } from '../gauge/open-picture.ts';
import type { AimAsked, CameraWorker, DarkAsked, MeterTold } from './protocol.ts';

/** The dark frame, and the brightest reading without one, against which it is held. */
const held: { dark: CameraDark | null; lit: CameraReading | null } = { dark: null, lit: null };

/** One canvas for all pictures of a stream. */
const sheet = new OffscreenCanvas(1, 1);

const worker: CameraWorker = {
  meter: async (bitmap, asked, dark) => metered(pictureOf(bitmap), asked, dark),
  spot: async (bitmap) => cardSpot(pictureOf(bitmap)),
  async spotInFile(file) {
    try {
      const picture = await openPicture(file);
      const { width, height } = picture;
      return { kind: 'read', read: cardSpot(picture), size: { width, height } };
    } catch (error) {
      if (!(error instanceof Refusal)) throw error;
      const [{ what, mend } = { what: '', mend: '' }] = error.parts;
      return { kind: 'refused', what, mend };
    }
  },
  async file(bitmap, region, name) {
    const { x, y, width, height } = region ?? { x: 0, y: 0, width: bitmap.width, height: bitmap.height };
    const canvas = new OffscreenCanvas(width, height);
    contextOf(canvas).drawImage(bitmap, -x, -y);
    bitmap.close();
    return new File([await canvas.convertToBlob({ type: 'image/png' })], name, { type: 'image/png' });
  },
};

function metered(picture: Picture, asked: AimAsked, dark: DarkAsked): MeterTold {
  const { width, height } = picture;
  const aim = aimOf(picture, asked);
  const bare = cameraReading(picture, aim, null);
  if (asked.by !== 'aim') held.lit = null;
  if (dark === 'none' || dark === 'begin') held.dark = null;
  if (dark === 'begin' || dark === 'more') held.dark = withDarkPicture(held.dark, picture);
  else if (held.lit === null || bare.value > held.lit.value) held.lit = bare;
  const isDone = held.dark !== null && held.dark.count >= darkPictures;
  return {
    size: { width, height },
    aim,
    reading: isDone ? cameraReading(picture, aim, held.dark) : bare,
    dark: held.dark?.count ?? 0,
    darkIsDone: isDone,
    wasLit: dark === 'more' && isDone && held.lit !== null && isHardlyDarker(held.lit, bare),
  };
}

function aimOf(picture: Picture, asked: AimAsked): CameraAim {
  switch (asked.by) {
    case 'brightest':
      return aimAtBrightest(picture);
    case 'region':
      return aimAt(picture, asked.region);
    case 'aim':
      return asked.aim;
  }
}

/** A picture's codes as the camera gave them; the bitmap is let go. */
function pictureOf(bitmap: ImageBitmap): Picture {
  const { width, height } = bitmap;
  if (sheet.width !== width) sheet.width = width;
  if (sheet.height !== height) sheet.height = height;
  const context = contextOf(sheet);
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return pictureOfFrame({ width, height, data: context.getImageData(0, 0, width, height).data });
}

function contextOf(canvas: OffscreenCanvas): OffscreenCanvasRenderingContext2D {
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('no canvas');
  return context;
}

expose(worker);
