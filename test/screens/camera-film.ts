import { renameSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The file that the browser's fake camera plays, over and over; read anew each time a page opens the camera. */
export const film = join(tmpdir(), 'coreward-camera-film.y4m');

/** What makes Chromium's fake camera play it; its window that asks for leave is answered with yes. */
export const cameraArguments: readonly string[] = [
  '--use-fake-ui-for-media-stream',
  '--use-fake-device-for-media-stream',
  `--use-file-for-fake-video-capture=${film}`,
];

/** Light of one picture in shares of full scale, by pixel from the top left. */
export type Scene = (x: number, y: number) => number;

export interface FilmSize {
  readonly width: number;
  readonly height: number;
}
export const usualSize: FilmSize = { width: 640, height: 480 };

/**
 * Writes a film of grey pictures as a camera for screens codes them, each scene for a while, then all of them again.
 *
 * @param each how many pictures of a scene follow each other, at 30 a second
 * @source IEC 61966-2-1 for the codes, ITU-R BT.601 for luma from 16 to 235; both from memory
 */
export function writeFilm(scenes: readonly Scene[], each = 4, { width, height } = usualSize): void {
  const head = Buffer.from(`YUV4MPEG2 W${width} H${height} F30:1 Ip A1:1 C420jpeg\n`);
  const colour = Buffer.alloc((width * height) / 2, 128);
  const pictures = scenes.flatMap((scene) => {
    const luma = Buffer.alloc(width * height);
    for (let i = 0; i < luma.length; i++) {
      const light = Math.min(1, Math.max(0, scene(i % width, Math.floor(i / width))));
      const code = light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055;
      luma[i] = Math.round(16 + 219 * code);
    }
    const picture = Buffer.concat([Buffer.from('FRAME\n'), luma, colour]);
    return Array.from({ length: each }, () => picture);
  });
  // renamed, not overwritten: a camera that is still open goes on with the film it has
  writeFileSync(`${film}.new`, Buffer.concat([head, ...pictures]));
  renameSync(`${film}.new`, film);
}

/** A round Gaussian spot; its light over all pixels is 2π·deviation²·peak. */
export const spotScene =
  (peak: number, deviation: number, x0: number, y0: number): Scene =>
  (x, y) =>
    peak * Math.exp(-((x - x0) ** 2 + (y - y0) ** 2) / (2 * deviation ** 2));

/** Nothing but a little unevenness. */
export const darkScene: Scene = () => 0;
