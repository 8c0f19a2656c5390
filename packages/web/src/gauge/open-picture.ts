import {
  brokenPicture,
  checkedFormat,
  type Picture,
  pictureOfJpeg,
  pictureOfPng,
  Refusal,
  refuseTooLarge,
} from '@coreward/bench';
import { convertIndexedToRgb, decode } from 'fast-png';

/**
 * A picture as plain numbers: a PNG by its own codes, a JPEG as the browser unpacks it, with no colours matched.
 *
 * @throws {Refusal} if it is neither, broken, or too large
 */
export async function openPicture(file: File): Promise<Picture> {
  const bytes = new Uint8Array(await file.arrayBuffer());
  const format = checkedFormat(bytes, file.name);
  try {
    return format === 'png' ? fromPng(bytes) : await fromJpeg(file, bytes);
  } catch (error) {
    throw error instanceof Refusal ? error : brokenPicture(error, file.name);
  }
}

function fromPng(bytes: Uint8Array): Picture {
  const png = decode(bytes);
  return pictureOfPng(png.palette === undefined ? png : { ...png, depth: 8, data: convertIndexedToRgb(png) });
}

async function fromJpeg(file: File, bytes: Uint8Array): Promise<Picture> {
  const bitmap = await createImageBitmap(file, { colorSpaceConversion: 'none' });
  const { width, height } = bitmap;
  refuseTooLarge(width * height, file.name);
  const context = new OffscreenCanvas(width, height).getContext('2d', { willReadFrequently: true });
  if (context === null) throw new Error('no canvas');
  context.drawImage(bitmap, 0, 0);
  bitmap.close();
  return pictureOfJpeg({ width, height, data: context.getImageData(0, 0, width, height).data }, bytes);
}
