import { mostPixels, type Picture, Refusal } from '@coreward/bench';
import { convertIndexedToRgb, decode as decodePng } from 'fast-png';
import { decode as decodeJpeg } from 'jpeg-js';

/** Whether the bytes begin as a PNG or a JPEG does. */
export function isPicture(bytes: Uint8Array): boolean {
  return isPng(bytes) || isJpeg(bytes);
}

const isPng = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47;
const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8;

/**
 * A PNG (8 or 16 bits, fewer are stretched to 8) or a JPEG as plain numbers; transparency is left out.
 *
 * @throws {Refusal} if it is neither, broken, or has more pixels than are looked at
 */
export function decodePicture(bytes: Uint8Array, file: string): Picture {
  if (!isPicture(bytes)) {
    throw new Refusal({
      where: file,
      what: 'this is neither a PNG nor a JPEG',
      mend: 'Save the picture as a PNG; a camera’s raw file as one of 16 bits.',
    });
  }
  const pixels = isPng(bytes) ? sizeOfPng(bytes) : 0;
  if (pixels > mostPixels) throw tooLarge(file, pixels);
  try {
    return isPng(bytes) ? fromPng(bytes) : fromJpeg(bytes);
  } catch (error) {
    throw new Refusal({
      where: file,
      what: `the picture cannot be read (${error instanceof Error ? error.message : String(error)})`,
      mend: 'Save it once more as a PNG, or crop it to the spot.',
    });
  }
}

/** Width times height as the header says, before anything is unpacked. */
function sizeOfPng(bytes: Uint8Array): number {
  if (bytes.length < 24) return 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return view.getUint32(16) * view.getUint32(20);
}

function tooLarge(file: string, pixels: number): Refusal {
  return new Refusal({
    where: file,
    what: `the picture has ${Math.round(pixels / 1e6)} megapixels, more than the ${mostPixels / 1e6} that are looked at`,
    mend: 'Crop it to the spot and some dark around it.',
  });
}

function fromPng(bytes: Uint8Array): Picture {
  const png = decodePng(bytes);
  const { width, height, depth } = png;
  const data = png.palette === undefined ? png.data : convertIndexedToRgb(png);
  const channels = data.length / (width * height);
  const stretch = png.palette === undefined && depth < 8 ? 255 / (2 ** depth - 1) : 1;
  const flat =
    depth < 8 && png.palette === undefined ? unpacked(png.data, width, height, depth, stretch) : data;
  const shown = flat.length / (width * height) || channels;
  return {
    width,
    height,
    channels: shown >= 3 ? 3 : 1,
    samples: withoutAlpha(flat, width * height, shown),
    fullScale: depth === 16 ? 65535 : 255,
    format: 'png',
  };
}

/** Grey codes of fewer than eight bits lie several to a byte, each row beginning a new one. */
function unpacked(
  data: ArrayLike<number>,
  width: number,
  height: number,
  depth: number,
  stretch: number,
): Uint8Array {
  const row = Math.ceil((width * depth) / 8);
  return Uint8Array.from({ length: width * height }, (_, i) => {
    const x = i % width;
    const bit = x * depth;
    const byte = data[Math.floor(i / width) * row + (bit >> 3)]!;
    return ((byte >> (8 - depth - (bit & 7))) & (2 ** depth - 1)) * stretch;
  });
}

function withoutAlpha(data: ArrayLike<number>, pixels: number, channels: number): Uint8Array | Uint16Array {
  const kept = channels >= 3 ? 3 : 1;
  const make = data instanceof Uint16Array ? new Uint16Array(pixels * kept) : new Uint8Array(pixels * kept);
  for (let i = 0; i < pixels; i++)
    for (let k = 0; k < kept; k++) make[i * kept + k] = data[i * channels + k]!;
  return make;
}

function fromJpeg(bytes: Uint8Array): Picture {
  const { width, height, data } = decodeJpeg(bytes, {
    useTArray: true,
    formatAsRGBA: false,
    maxResolutionInMP: mostPixels / 1e6,
    maxMemoryUsageInMB: 1024,
  });
  const isGrey = greyOnly(data);
  return {
    width,
    height,
    channels: isGrey ? 1 : 3,
    samples: isGrey ? Uint8Array.from({ length: width * height }, (_, i) => data[3 * i]!) : data,
    fullScale: 255,
    format: 'jpeg',
    ...blockStepOf(bytes),
  };
}

/**
 * The step to which the first six coefficients of a block were rounded, on average: entries of the first quantisation
 * table, in codes, for the transform is orthonormal up to a factor that the table holds.
 *
 * @source ISO/IEC 10918-1, the marker DQT (from memory)
 */
function blockStepOf(bytes: Uint8Array): { readonly blockStep: number } | undefined {
  for (let at = 2; at + 70 < bytes.length && bytes[at] === 0xff; ) {
    const length = bytes[at + 2]! * 256 + bytes[at + 3]!;
    if (bytes[at + 1] === 0xdb) {
      const wide = bytes[at + 4]! >> 4 === 1 ? 2 : 1;
      const entry = (i: number): number =>
        wide === 2 ? bytes[at + 5 + 2 * i]! * 256 + bytes[at + 6 + 2 * i]! : bytes[at + 5 + i]!;
      return { blockStep: [0, 1, 2, 3, 4, 5].reduce((sum, i) => sum + entry(i), 0) / 6 };
    }
    at += 2 + length;
  }
  return undefined;
}

/** A grey JPEG is given out in three equal channels. */
function greyOnly(data: Uint8Array): boolean {
  for (let i = 0; i + 2 < data.length; i += 3)
    if (data[i] !== data[i + 1] || data[i] !== data[i + 2]) return false;
  return true;
}
