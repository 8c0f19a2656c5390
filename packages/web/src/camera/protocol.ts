import type { CameraAim, CameraReading, CardSpotRead, PictureSize, Region } from '@coreward/bench';

/** Where a meter looks: at the brightest spot, at a region somebody chose, or where it looked before. */
export type AimAsked =
  | { readonly by: 'brightest' }
  | { readonly by: 'region'; readonly region: Region }
  | { readonly by: 'aim'; readonly aim: CameraAim };

/** What becomes of the dark frame: begun anew with this picture, one more taken, left as it is, or thrown away. */
export type DarkAsked = 'begin' | 'more' | 'keep' | 'none';

export interface MeterTold {
  readonly size: PictureSize;
  readonly aim: CameraAim;
  readonly reading: CameraReading;
  /** Pictures in the dark frame; 0: there is none. */
  readonly dark: number;
  readonly darkIsDone: boolean;
  /** The dark frame just taken is hardly darker than the brightest picture before: perhaps the beam was on. */
  readonly wasLit: boolean;
}

/** What the worker does with pictures, apart from the page. Bitmaps are given away to it. */
export interface CameraWorker {
  readonly meter: (bitmap: ImageBitmap, aim: AimAsked, dark: DarkAsked) => Promise<MeterTold>;
  /** The one spot in a picture. */
  readonly spot: (bitmap: ImageBitmap) => Promise<CardSpotRead>;
  /** The same of a file; refused as any picture is. */
  readonly spotInFile: (file: File) => Promise<SpotInFile>;
  /** A region of a picture as a file, its codes untouched. */
  readonly file: (bitmap: ImageBitmap, region: Region | null, name: string) => Promise<File>;
}

export type SpotInFile =
  | { readonly kind: 'read'; readonly read: CardSpotRead; readonly size: PictureSize }
  | { readonly kind: 'refused'; readonly what: string; readonly mend: string };
