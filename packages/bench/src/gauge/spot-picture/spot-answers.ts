import { type Doubt, determined, type GaugeAnswer, undetermined } from '../answer.ts';
import { inPixels, type Seen } from './find-spot.ts';
import type { MainAxes } from './moments.ts';
import type { PlaneRead } from './plane.ts';
import { lightAtFrame, type SpotDoubts, spotDoubts, trueAxes } from './spot-doubts.ts';
import { peakOf } from './spot-lack.ts';

/** Length of a pixel where the spot is, m. */
export interface Scale {
  readonly value: number;
  readonly uncertainty: number;
}

/**
 * Share of a width that lies in faint tails beyond the window, by its reach: LP11 and LP01 together lose a fifth of a per
 * cent of the widest (computed), a Gaussian half a per cent of the narrowest.
 */
const faintTails: ReadonlyMap<number, number> = new Map([
  [6, 0.0015],
  [4.5, 0.0045],
  [3.6, 0.008],
]);

/**
 * What averaging over one pixel adds to a squared deviation, px²: a twelfth where the pixels stand close, nothing where they
 * are dots. Which is not known: half of it is taken off, and as much is the doubt.
 *
 * @source W. F. Sheppard, Proc. London Math. Soc. 29, 353 (1898) (from memory)
 */
const pixelShare = 1 / 24;

/** Widths along both main axes and their mean, ellipticity, azimuth and centre of a spot. */
export function answersOf(read: PlaneRead, seen: Seen, scale: Scale | null): readonly GaugeAnswer[] {
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
        of('faint light beyond the window', value * (faintTails.get(spot.reach) ?? 0)),
        of('width of one pixel', perSquare * (pixelShare / block ** 2)),
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
  const place = (axis: 0 | 1): readonly Doubt[] => [
    ...noise(block * doubts.centre[axis]),
    { from: 'a picture darker towards its corners', uncertainty: block * doubts.falloff[axis] },
  ];
  return [
    width('d4sigmaMajor', axes.major, 'major'),
    width('d4sigmaMinor', axes.minor, 'minor'),
    width('d4sigma', round, 'mean'),
    determined({ quantity: 'ellipticity', value: ratio, doubts: noise(ratioDoubt), shape: 'positive', weak }),
    azimuth(),
    determined({ quantity: 'centroidX_px', value: centre.x, doubts: place(0) }),
    determined({ quantity: 'centroidY_px', value: centre.y, doubts: place(1) }),
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
    // tan 2α = 2·cross/(major² − minor²), about the axes as they were found
    const uncertainty = doubts.cross / (axes.major ** 2 - axes.minor ** 2);
    return determined({
      quantity,
      value: spot.axes.azimuth,
      doubts: noise(Math.max(uncertainty, 1e-4)),
      weak,
    });
  }
}

/**
 * Averaging over a block widens a spot as a slit does: (block² − 1)/12 pixels² on each axis are taken off, and what is taken for
 * the pixel itself.
 *
 * @source W. F. Sheppard, Proc. London Math. Soc. 29, 353 (1898) (from memory)
 */
function withoutBlocks<T extends MainAxes>(axes: T, block: number): T {
  const excess = (1 - 1 / block ** 2) / 12 + pixelShare / block ** 2;
  const without = (deviation: number): number => Math.sqrt(Math.max(deviation ** 2 - excess, 0));
  return { ...axes, major: without(axes.major), minor: without(axes.minor) };
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
