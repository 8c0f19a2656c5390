import {
  brokenPicture,
  checkedFormat,
  mostPixels,
  type Picture,
  pictureOfJpeg,
  pictureOfPng,
} from '@coreward/bench';
import { convertIndexedToRgb, decode as decodePng } from 'fast-png';
import { decode as decodeJpeg } from 'jpeg-js';

/**
 * A PNG (8 or 16 bits, fewer are stretched to 8) or a JPEG as plain numbers; transparency is left out.
 *
 * @throws {Refusal} if it is neither, broken, or has more pixels than are looked at
 */
export function decodePicture(bytes: Uint8Array, file: string): Picture {
  const format = checkedFormat(bytes, file);
  try {
    return format === 'png' ? fromPng(bytes) : fromJpeg(bytes);
  } catch (error) {
    throw brokenPicture(error, file);
  }
}

function fromPng(bytes: Uint8Array): Picture {
  const png = decodePng(bytes);
  return pictureOfPng(png.palette === undefined ? png : { ...png, depth: 8, data: convertIndexedToRgb(png) });
}

function fromJpeg(bytes: Uint8Array): Picture {
  const jpeg = decodeJpeg(bytes, {
    useTArray: true,
    formatAsRGBA: false,
    maxResolutionInMP: mostPixels / 1e6,
    maxMemoryUsageInMB: 1024,
  });
  return pictureOfJpeg(jpeg, bytes);
}
