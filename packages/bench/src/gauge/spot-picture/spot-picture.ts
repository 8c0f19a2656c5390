import { lightFromSrgb } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { type Doubt, determined, type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings, Setting } from '../gauge.ts';
import { setTo, setToWithin } from '../setting-words.ts';
import { findSpot, inPixels, type Seen } from './find-spot.ts';
import { forWindow, type MainAxes } from './moments.ts';
import { type Encoding, type Plane, type PlaneRead, planeOf } from './plane.ts';
import { lightAtFrame, type SpotDoubts, spotDoubts, trueAxes } from './spot-doubts.ts';

/** The gauge that measures a spot in a picture. */
export const spotPicture: Gauge = {
  name: 'spot-picture',
  otherNames: ['spot-image'],
  title: 'spot picture',
  answers: 'second-moment widths along both main axes, azimuth, ellipticity and centre of a spot',
  needs:
    'a picture of the whole spot with some dark around it, exposed so that no pixel is full, and its scale',
  takes: 'picture',
  columns: [],
  settings: [
    {
      name: 'pixel',
      dimension: 'length',
      needed: false,
      otherNames: ['pixel pitch', 'pitch', 'pixel size'],
      what: 'width of one pixel where the spot is',
    },
    {
      name: 'ruler pixels',
      dimension: 'number',
      needed: false,
      what: 'pixels along a ruler in the picture, for the scale instead of `pixel`',
    },
    {
      name: 'ruler length',
      dimension: 'length',
      needed: false,
      what: 'what the ruler reads over those pixels',
    },
    {
      name: 'encoding',
      dimension: 'word',
      words: { linear: 'linear', raw: 'linear', srgb: 'srgb' },
      needed: false,
      what: 'how codes stand for light; left out: srgb for a colour JPEG, else linear',
    },
  ],
  measure: measureSpot,
};

const widthNames = ['d4sigmaMajor', 'd4sigmaMinor', 'd4sigma'] as const;
const placeNames = ['ellipticity', 'azimuthMajor_imageDown_rad', 'centroidX_px', 'centroidY_px'] as const;

function measureSpot({ picture, settings, words }: Readings): GaugeResult {
  if (picture === null) {
    throw new Refusal({ where: 'spot-picture', what: 'there is no picture', mend: 'Give a PNG or a JPEG.' });
  }
  const scale = scaleOf(settings);
  const encoding = (words.encoding ??
    (picture.format === 'jpeg' && picture.channels === 3 ? 'srgb' : 'linear')) as Encoding;
  const read = planeOf(picture, encoding, lightFromSrgb);
  const seen = findSpot(read.plane);
  const remarks = remarksOn(read, encoding, picture.format, seen, scale);
  const lack = seen === null ? nothing : lackOf(read, seen);
  const unit = scale === null ? 'px' : 'm';
  if (seen === null || lack !== null) {
    const { because, add } = lack ?? nothing;
    const names = [...widthNames.map((name) => `${name}_${unit}`), ...placeNames];
    return { answers: names.map((name) => undetermined(name, because, add)), remarks, curves: [] };
  }
  return { answers: answersOf(read, seen, scale), remarks, curves: [] };
}

interface Scale {
  readonly value: number;
  readonly uncertainty: number;
}

function scaleOf(settings: Readonly<Record<string, Setting>>): Scale | null {
  const { pixel } = settings;
  if (pixel !== undefined) return { value: pixel.value, uncertainty: pixel.uncertainty ?? 0 };
  const [pixels, length] = [settings['ruler pixels'], settings['ruler length']];
  if (pixels === undefined || length === undefined) return null;
  const value = length.value / pixels.value;
  // a line of the ruler is found to a pixel or two, and a ruler is read to a quarter of a millimetre (common practice, no source)
  const relative = Math.hypot(
    (pixels.uncertainty ?? 1.5) / pixels.value,
    (length.uncertainty ?? 0.25e-3) / length.value,
  );
  return { value, uncertainty: value * relative };
}

interface Lack {
  readonly because: string;
  readonly add: string;
}

const nothing: Lack = {
  because: 'no single spot stands out of the dark in this picture',
  add: 'Crop it to the spot, and darken the room.',
};

/** Share of a width that lies in faint tails beyond the window: LP11 and LP01 together lose a fifth of a per cent (computed). */
const faintTails = 0.0015;

/** More of the peak than this at the frame's edge, and the widths are cut: three deviations out. */
const mostAtFrame = 0.012;

function lackOf(read: PlaneRead, seen: Seen): Lack | null {
  const { plane, step } = read;
  const { spot } = seen;
  if (!spot.settled) return nothing;
  const full = countFull(plane, seen, step);
  if (full > 2) {
    return {
      because: `${full} pixels of the spot are full: what lies above is cut off`,
      add: 'Take it again with a shorter exposure, or weaker light.',
    };
  }
  if (lightAtFrame(seen, peakOf(seen)) > mostAtFrame) {
    return {
      because: 'the frame cuts the spot',
      add: 'Take it again with the whole spot in the picture and as much dark around it.',
    };
  }
  const doubts = spotDoubts(seen, read);
  const relative = Math.hypot(doubts.noise.minor, doubts.background.minor) / (2 * spot.axes.minor ** 2);
  if (relative > 0.15) {
    return {
      because: 'the spot is too faint against the noise around it',
      add: 'Expose longer, darken the room, or average several pictures.',
    };
  }
  return null;
}

/** Full pixels, or pixels that share the highest code where light should have a peak. */
function countFull(plane: Plane, { spot, block }: Seen, step: number): number {
  const window = inPixels(spot.window, block);
  let top = 0;
  forWindow(plane, window, (at) => {
    top = Math.max(top, plane.light[at]!);
  });
  let count = 0;
  forWindow(plane, window, (at) => {
    if (plane.light[at]! > top - step / 2) count += 1;
  });
  if (top > 1 - step / 2) return count;
  // one step below the peak of a Gaussian lie 2πσ²·step/peak pixels
  const expected = (2 * Math.PI * spot.axes.major * spot.axes.minor * block ** 2 * step) / top;
  return count > 12 && count > 5 * expected + 12 ? count : 0;
}

function peakOf({ spot, blocks }: Seen): number {
  const { window, background } = spot;
  let top = 0;
  forWindow(blocks, window, (at) => {
    top = Math.max(top, blocks.light[at]!);
  });
  return top - background.level - background.slopeX * window.x - background.slopeY * window.y;
}

function answersOf(read: PlaneRead, seen: Seen, scale: Scale | null): readonly GaugeAnswer[] {
  const { spot, block } = seen;
  const doubts = spotDoubts(seen, read);
  const axes = withoutBlocks(trueAxes(spot.axes, doubts.difference), block);
  const cut = frameDoubt(lightAtFrame(seen, peakOf(seen)));
  const small = block === 1 && spot.axes.minor < 2;
  const weak = small
    ? {
        because: 'the spot is only a few pixels wide, and what one pixel averages shows',
        add: 'Go nearer, or put a lens before the camera.',
      }
    : undefined;
  const pixel = scale?.value ?? 1;
  const pitch = pixel * block;
  const unit = scale === null ? 'px' : 'm';
  const width = (name: string, deviation: number, which: keyof SpotDoubts['noise']): GaugeAnswer => {
    const value = 4 * deviation * pitch;
    // from px² of the squared deviation to the width
    const perSquare = (2 * pitch) / deviation;
    const of = (from: string, uncertainty: number): Doubt => ({ from, uncertainty });
    return determined({
      quantity: `${name}_${unit}`,
      value,
      doubts: [
        of('noise of the pixels', perSquare * doubts.noise[which]),
        of('level of the dark around the spot', perSquare * doubts.background[which]),
        of('light cut off by the frame', value * cut),
        of('faint light beyond the window', value * (spot.reach < 6 ? 3 * faintTails : faintTails)),
        of('width of one pixel', small ? perSquare / 12 : 0),
        of('scale of the picture', (value * (scale?.uncertainty ?? 0)) / pixel),
      ],
      shape: 'positive',
      weak,
    });
  };
  const centre = inPixels({ ...spot.window, x: spot.moments.x, y: spot.moments.y }, block);
  const round = Math.sqrt((axes.major ** 2 + axes.minor ** 2) / 2);
  const ratio = axes.minor / axes.major;
  const ratioDoubt = (ratio * doubts.difference) / (2 * axes.major * axes.minor);
  const noise = (uncertainty: number): Doubt[] => [{ from: 'noise of the pixels', uncertainty }];
  return [
    width('d4sigmaMajor', axes.major, 'major'),
    width('d4sigmaMinor', axes.minor, 'minor'),
    width('d4sigma', round, 'mean'),
    determined({ quantity: 'ellipticity', value: ratio, doubts: noise(ratioDoubt), shape: 'positive', weak }),
    azimuth(),
    determined({ quantity: 'centroidX_px', value: centre.x, doubts: noise(block * doubts.centre) }),
    determined({ quantity: 'centroidY_px', value: centre.y, doubts: noise(block * doubts.centre) }),
  ];

  function azimuth(): GaugeAnswer {
    const quantity = 'azimuthMajor_imageDown_rad';
    if (axes.isRound) {
      return undetermined(
        quantity,
        'the spot is round within its noise, so it has no long axis',
        'None is needed.',
      );
    }
    const uncertainty = doubts.difference / (2 * (axes.major ** 2 - axes.minor ** 2));
    return determined({
      quantity,
      value: spot.axes.azimuth,
      doubts: noise(Math.max(uncertainty, 1e-4)),
      weak,
    });
  }
}

/**
 * Averaging over a block widens a spot as a slit does: (block² − 1)/12 pixels² on each axis are taken off.
 *
 * @source W. F. Sheppard, Proc. London Math. Soc. 29, 353 (1898) (from memory)
 */
function withoutBlocks<T extends MainAxes>(axes: T, block: number): T {
  const excess = (1 - 1 / block ** 2) / 12;
  return { ...axes, major: Math.sqrt(axes.major ** 2 - excess), minor: Math.sqrt(axes.minor ** 2 - excess) };
}

/**
 * Share of a width that a frame takes away if so much of the peak reaches it on one side: a Gaussian cut there.
 *
 * @source second moment of a Gaussian beyond k deviations, kφ(k) + Q(k): elementary, without the small Q
 */
function frameDoubt(share: number): number {
  if (!(share > 1e-6)) return 0;
  const k = Math.sqrt(-2 * Math.log(Math.min(share, 0.9)));
  return (k * share) / Math.sqrt(2 * Math.PI) / 2;
}

function remarksOn(
  { channel }: PlaneRead,
  encoding: Encoding,
  format: 'png' | 'jpeg',
  seen: Seen | null,
  scale: Scale | null,
): readonly string[] {
  const remarks: string[] = [];
  if (channel !== 'grey') remarks.push(`Only the ${channel} channel was summed: it sees most of the light.`);
  if (format === 'jpeg')
    remarks.push(
      encoding === 'srgb'
        ? 'The codes were taken as sRGB. Few cameras keep to it exactly: test yours with two known levels (camera-linearity).'
        : `The codes were taken as proportional to light. If a phone made the picture, ${setToWithin('encoding', 'srgb')}.`,
    );
  if (scale === null)
    remarks.push(
      `Widths are in pixels. ${setTo('pixel', '5.2 µm')}, the width of one, to have them as lengths.`,
    );
  if (seen !== null && seen.hotPixels > 0)
    remarks.push(`${seen.hotPixels} hot pixels were replaced by their neighbours’ median.`);
  return remarks;
}
