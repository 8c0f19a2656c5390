/** A picture as plain numbers, row by row from the top, channels side by side. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  /** 1 grey, 3 red, green and blue. */
  readonly channels: 1 | 3;
  readonly samples: Uint8Array | Uint16Array;
  /** The largest code a sample can have: 255 or 65535. */
  readonly fullScale: number;
  readonly format: 'png' | 'jpeg';
  /** Step to which a JPEG rounded the slow parts of its blocks, in codes; left out where nothing was rounded so. */
  readonly blockStep?: number;
}

/** The largest picture that is looked at, pixels. */
export const mostPixels = 50e6;
