import { crc32, deflateSync } from 'node:zlib';
import { type FilmSize, type Scene, usualSize } from './camera-film.ts';

/**
 * A grey picture as a camera for screens codes it, in a PNG file of 8 bits.
 *
 * @source W3C Portable Network Graphics, second edition: 5.3 chunks, 11.2.2 IHDR, 9.2 no filter; IEC 61966-2-1 for the codes;
 *   both from memory
 */
export function pngOf(scene: Scene, { width, height }: FilmSize = usualSize): Buffer {
  const rows = Buffer.alloc((width + 1) * height);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const light = Math.min(1, Math.max(0, scene(x, y)));
      const code = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
      rows[y * (width + 1) + 1 + x] = Math.round(255 * code);
    }
  const head = Buffer.alloc(13);
  head.writeUInt32BE(width, 0);
  head.writeUInt32BE(height, 4);
  // 8 bits, grey
  head[8] = 8;
  return Buffer.concat([
    Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]),
    chunk('IHDR', head),
    chunk('IDAT', deflateSync(rows)),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

function chunk(name: string, data: Buffer): Buffer {
  const named = Buffer.concat([Buffer.from(name), data]);
  const [length, check] = [Buffer.alloc(4), Buffer.alloc(4)];
  length.writeUInt32BE(data.length);
  check.writeUInt32BE(crc32(named));
  return Buffer.concat([length, named, check]);
}
