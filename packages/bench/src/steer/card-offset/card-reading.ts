import { type Doubt, determined, type GaugeAnswer } from '../../gauge/answer.ts';
import type { CardOffset } from '../exact-turns.ts';
import { type CardScale, onCard, withMovedCorners } from './card-scale.ts';
import type { CardSpot } from './card-spot.ts';
import type { Point } from './homography.ts';

/** Which way a camera looks at the card: with the forward beam, or against it, when left and right change sides. */
export type CameraLooks = 'downstream' | 'upstream';

/** How far the forward spot lies from the reverse spot on a card. */
export interface CardReading {
  /** m; right and up are positive, seen looking downstream. */
  readonly offset: CardOffset;
  /** Standard uncertainties, m. */
  readonly uncertainty: CardOffset;
  /** Which way the forward spot must go to lie on the reverse one; null where the doubt is larger than the way. */
  readonly bring: { readonly horizontal: 'left' | 'right' | null; readonly vertical: 'up' | 'down' | null };
  /** Distance of both and its 90 % interval, m. */
  readonly distance: number;
  readonly answers: readonly [GaugeAnswer, GaugeAnswer, GaugeAnswer];
}

/**
 * Slope of a card's own brightness, rms, a share per metre, and the length beyond which it averages out under a spot, m:
 * 3 % a millimetre (paper held to a lamp; common practice, no source).
 */
const cardPattern = { slope: 30, length: 0.5e-3 } as const;

/** How far the card's own pattern shifts a spot of this square, m: a slope g shifts a bell by g·σ². @source elementary */
const shiftByCard = (square: number): number =>
  (cardPattern.slope * square) / (1 + square / cardPattern.length ** 2);

/** Mean square of 1 − cos of a tilt that is anything up to θ: θ⁴/20 for what is not large. @source elementary */
const shortening = (most: number): number => most ** 2 / Math.sqrt(20);

/**
 * Offset of two beams on a card from the spot of each; card and camera have not moved between the two pictures.
 *
 * @source standard uncertainties in quadrature: JCGM 100:2008 (GUM), 5.1.2 (from memory)
 */
export function cardReading(
  forward: CardSpot,
  reverse: CardSpot,
  scale: CardScale,
  looks: CameraLooks = 'downstream',
): CardReading {
  const side = looks === 'downstream' ? 1 : -1;
  const plain = offsetBy(scale, forward, reverse);
  const offset = { x: side * plain.x, y: plain.y };
  const doubts = { x: doubtsOn('x'), y: doubtsOn('y') };
  const horizontal = determined({ quantity: 'horizontalOffset_right_m', value: offset.x, doubts: doubts.x });
  const vertical = determined({ quantity: 'verticalOffset_up_m', value: offset.y, doubts: doubts.y });
  const uncertainty = { x: horizontal.uncertainty!, y: vertical.uncertainty! };
  const isSure = (axis: 'x' | 'y'): boolean => Math.abs(offset[axis]) > uncertainty[axis];
  const distance = Math.hypot(offset.x, offset.y);
  return {
    offset,
    uncertainty,
    bring: {
      horizontal: isSure('x') ? (offset.x > 0 ? 'left' : 'right') : null,
      vertical: isSure('y') ? (offset.y > 0 ? 'down' : 'up') : null,
    },
    distance,
    answers: [horizontal, vertical, distanceAnswer()],
  };

  function doubtsOn(axis: 'x' | 'y'): readonly Doubt[] {
    const [one, other] = [squaresOn(scale, forward)[axis], squaresOn(scale, reverse)[axis]];
    const spotDoubt = (from: string, spot: CardSpot, square: number): Doubt => ({
      from,
      uncertainty: Math.sqrt(square) * spot.centre.speckle,
      freedom: spot.centre.freedom,
    });
    const along = plain[axis];
    const across = plain[axis === 'x' ? 'y' : 'x'];
    return [
      spotDoubt('speckle and grain in the forward spot', forward, one),
      spotDoubt('speckle and grain in the reverse spot', reverse, other),
      {
        from: 'noise of the pixels',
        uncertainty: Math.hypot(
          Math.sqrt(one) * forward.centre.noise,
          Math.sqrt(other) * reverse.centre.noise,
        ),
      },
      { from: 'uneven card', uncertainty: Math.hypot(shiftByCard(one), shiftByCard(other)) },
      ...scaleDoubts(axis, along, across),
    ];
  }

  function scaleDoubts(axis: 'x' | 'y', along: number, across: number): readonly Doubt[] {
    switch (scale.kind) {
      case 'pixel': {
        const lost = shortening(scale.mostTilt);
        return [
          { from: 'scale of the picture', uncertainty: (Math.abs(along) * scale.uncertainty) / scale.pixel },
          // the camera stands beside the card, above or below it, as likely as not: half of the squares on each axis
          {
            from: 'perspective, for the camera looks aslant',
            uncertainty: lost * Math.hypot(0.8 * along, 0.35 * across),
          },
        ];
      }
      case 'rectangle': {
        const shifts = withMovedCorners(scale).map((one) => offsetBy(one, forward, reverse)[axis] - along);
        return [
          { from: 'scale of the picture', uncertainty: Math.abs(along) * scale.sideDoubt },
          { from: 'perspective, for the corners are marked to a pixel', uncertainty: Math.hypot(...shifts) },
        ];
      }
    }
  }

  /** Near zero the distance of two readings is more than that of the spots: there its interval begins at zero. */
  function distanceAnswer(): GaugeAnswer {
    const share = (axis: 'x' | 'y'): number => (distance > 0 ? offset[axis] / distance : Math.SQRT1_2);
    const all = doubts.x.map(({ from, uncertainty, freedom }, i): Doubt => {
      const both = Math.hypot(share('x') * uncertainty, share('y') * doubts.y[i]!.uncertainty);
      return freedom === undefined ? { from, uncertainty: both } : { from, uncertainty: both, freedom };
    });
    const answer = determined({ quantity: 'offset_m', value: distance, doubts: all, floor: 0 });
    // nine of ten lengths of a vector that is noise alone are within 2.15 deviations (S. O. Rice, 1945: Rayleigh's law)
    return distance < 2.15 * answer.uncertainty! ? { ...answer, low: 0 } : answer;
  }
}

function offsetBy(scale: CardScale, forward: Point, reverse: Point): Point {
  const [a, b] = [onCard(scale, forward), onCard(scale, reverse)];
  return { x: a.x - b.x, y: a.y - b.y };
}

/** Mean squares of a spot on the card, m², along its two directions. */
function squaresOn(scale: CardScale, spot: CardSpot): Point {
  const { xx, xy, yy } = spot.square;
  const [here, right, down] = [
    onCard(scale, spot),
    onCard(scale, { x: spot.x + 1, y: spot.y }),
    onCard(scale, { x: spot.x, y: spot.y + 1 }),
  ];
  const square = (u: number, v: number): number => u * u * xx + 2 * u * v * xy + v * v * yy;
  return {
    x: square(right.x - here.x, down.x - here.x),
    y: square(right.y - here.y, down.y - here.y),
  };
}
