/** Pictures as plain numbers, once somebody has unpacked the file; and what is refused of one. */
import { Refusal } from '../refusal.ts';
import { mostPixels, type Picture } from './picture.ts';

/** The format by the first bytes; null for what is no picture that is looked at. */
export function pictureFormat(bytes: Uint8Array): Picture['format'] | null {
  if (bytes[0] === 0x89 && bytes[1] === 0x50 && bytes[2] === 0x4e && bytes[3] === 0x47) return 'png';
  return bytes[0] === 0xff && bytes[1] === 0xd8 ? 'jpeg' : null;
}

/**
 * The format of a file that is to be unpacked.
 *
 * @throws {Refusal} if it is no picture, or a PNG of more pixels than are looked at
 */
export function checkedFormat(bytes: Uint8Array, file: string): Picture['format'] {
  const format = pictureFormat(bytes);
  if (format === null) {
    throw new Refusal({
      where: file,
      what: 'this is neither a PNG nor a JPEG',
      mend: 'Save the picture as a PNG; a camera’s raw file as one of 16 bits.',
    });
  }
  if (format === 'png') refuseTooLarge(pixelsOfPng(bytes), file);
  return format;
}

/** @throws {Refusal} if a picture has more pixels than are looked at */
export function refuseTooLarge(pixels: number, file: string): void {
  if (pixels <= mostPixels) return;
  throw new Refusal({
    where: file,
    what: `the picture has ${Math.round(pixels / 1e6)} megapixels, more than the ${mostPixels / 1e6} that are looked at`,
    mend: 'Crop it to the spot and some dark around it.',
  });
}

/** What to say of a file that looks like a picture and cannot be unpacked. */
export function brokenPicture(error: unknown, file: string): Refusal {
  return new Refusal({
    where: file,
    what: `the picture cannot be read (${error instanceof Error ? error.message : String(error)})`,
    mend: 'Save it once more as a PNG, or crop it to the spot.',
  });
}

/** Width times height as the header says, before anything is unpacked. */
function pixelsOfPng(bytes: Uint8Array): number {
  if (bytes.length < 24) return 0;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return view.getUint32(16) * view.getUint32(20);
}

/** A PNG as it was unpacked: its codes as the file has them, a palette already looked up. */
export interface UnpackedPng {
  readonly width: number;
  readonly height: number;
  /** Bits of one code. */
  readonly depth: number;
  readonly data: ArrayLike<number>;
}

/** A PNG of 8 or 16 bits; fewer are stretched to 8, and transparency is left out. */
export function pictureOfPng({ width, height, depth, data }: UnpackedPng): Picture {
  const flat = depth < 8 ? unpacked(data, width, height, depth, 255 / (2 ** depth - 1)) : data;
  const channels = flat.length / (width * height);
  return {
    width,
    height,
    channels: channels >= 3 ? 3 : 1,
    samples: withoutAlpha(flat, width * height, channels),
    fullScale: depth === 16 ? 65535 : 255,
    format: 'png',
  };
}

/**
 * A JPEG, grey where its three channels are the same throughout.
 *
 * @param data three codes a pixel, or four with transparency
 * @param bytes the file, for how coarsely it was rounded
 */
export function pictureOfJpeg(
  { width, height, data }: Omit<UnpackedPng, 'depth'>,
  bytes: Uint8Array,
): Picture {
  const step = data.length / (width * height);
  const isGrey = greyOnly(data, step);
  return {
    width,
    height,
    channels: isGrey ? 1 : 3,
    samples: isGrey
      ? Uint8Array.from({ length: width * height }, (_, i) => data[step * i]!)
      : withoutAlpha(data, width * height, step),
    fullScale: 255,
    format: 'jpeg',
    ...blockStepOf(bytes),
  };
}

/** One picture of a camera's stream as a browser gives it out: four codes a pixel. Streams are packed as a JPEG is. */
export function pictureOfFrame({ width, height, data }: Omit<UnpackedPng, 'depth'>): Picture {
  return {
    width,
    height,
    channels: 3,
    samples: withoutAlpha(data, width * height, 4),
    fullScale: 255,
    format: 'jpeg',
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
function greyOnly(data: ArrayLike<number>, step: number): boolean {
  for (let i = 0; i + 2 < data.length; i += step)
    if (data[i] !== data[i + 1] || data[i] !== data[i + 2]) return false;
  return true;
}
