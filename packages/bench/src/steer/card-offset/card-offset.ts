import type { Gauge, GaugeResult, Readings } from '../../gauge/gauge.ts';
import type { Picture } from '../../gauge/picture.ts';
import { setTo, setToWithin } from '../../gauge/setting-words.ts';
import type { Encoding } from '../../gauge/spot-picture/plane.ts';
import { Refusal, type RefusalParts } from '../../refusal.ts';
import { type CameraLooks, cardReading } from './card-reading.ts';
import { type CardScale, readPixel, readRectangle, usualMostTilt } from './card-scale.ts';
import { type CardSpot, cardSpot, type SpotLack } from './card-spot.ts';

/** The gauge that reads how far two beams lie apart on a card, from a picture of each. */
export const cardOffset: Gauge = {
  name: 'card-offset',
  otherNames: [],
  title: 'offset on a card',
  answers:
    'how far the forward spot lies from the reverse spot on a card: horizontally (right is positive), vertically (up is positive), and the distance',
  needs:
    'two pictures, one with the forward beam alone and one with the reverse beam alone, card and camera unmoved, and the scale',
  takes: 'two pictures',
  columns: [],
  settings: [
    {
      name: 'scale',
      dimension: 'text',
      example: '12.5 px/mm',
      otherNames: ['pixel'],
      needed: false,
      what: 'pixels a length on the card, or the length of one pixel such as `0.08 mm ± 1 %`; without ± it is taken to 0.7 %',
    },
    {
      name: 'corners',
      dimension: 'text',
      example: '102,88 541,93 537,402 99,396',
      needed: false,
      what: 'instead of `scale`: four corners of a rectangle on the card, in pixels from the top left, in any order',
    },
    {
      name: 'rectangle',
      dimension: 'text',
      example: '40 mm x 30 mm',
      needed: false,
      what: 'with `corners`: the two sides of that rectangle, the one across the picture first',
    },
    {
      name: 'tilt',
      dimension: 'angle',
      needed: false,
      what: 'how far aslant the camera may look at the card where no corners are given; left out: 20°',
    },
    {
      name: 'looking',
      dimension: 'word',
      words: { downstream: 'downstream', upstream: 'upstream' },
      needed: false,
      what: 'which way the camera looks; upstream, as from behind the card, changes left and right. Left out: downstream, as the picture shows it',
    },
    {
      name: 'encoding',
      dimension: 'word',
      words: { linear: 'linear', raw: 'linear', srgb: 'srgb' },
      needed: false,
      what: 'how codes stand for light; left out: srgb for eight bits, linear for sixteen',
    },
  ],
  measure,
};

function measure(readings: Readings): GaugeResult {
  const { picture, reversePicture = null, settings, words } = readings;
  if (picture === null || reversePicture === null) {
    throw new Refusal({
      where: 'card-offset',
      what: 'two pictures are needed',
      mend: 'Give a PNG or JPEG of each beam, forward first.',
    });
  }
  const scale = scaleFrom(words, settings.tilt?.value ?? usualMostTilt);
  const encoding = words.encoding as Encoding | undefined;
  const both = [spotIn(picture, 'forward', encoding), spotIn(reversePicture, 'reverse', encoding)] as const;
  const refused = both.filter((one) => 'what' in one);
  if (picture.width !== reversePicture.width || picture.height !== reversePicture.height) {
    refused.push({
      where: 'reverse picture',
      what: `it has ${reversePicture.width} × ${reversePicture.height} pixels, the forward one ${picture.width} × ${picture.height}`,
      mend: 'Take both with the same camera, unmoved, and crop neither.',
    });
  }
  if (refused.length > 0) throw new Refusal(refused);
  const [forward, reverse] = both as readonly [CardSpot, CardSpot];
  const { answers } = cardReading(forward, reverse, scale, (words.looking ?? 'downstream') as CameraLooks);
  return { answers, remarks: remarksOn(scale, words), curves: [] };
}

function scaleFrom(words: Readings['words'], mostTilt: number): CardScale {
  const { scale, corners, rectangle } = words;
  if (corners !== undefined && rectangle !== undefined)
    return readRectangle(corners, rectangle, 'card-offset');
  if (corners !== undefined || rectangle !== undefined) {
    throw new Refusal({
      where: 'card-offset',
      what: corners === undefined ? 'a rectangle without corners' : 'corners without their rectangle',
      mend: `${
        corners === undefined
          ? setTo('corners', 'x1,y1 x2,y2 x3,y3 x4,y4')
          : setTo('rectangle', '40 mm x 30 mm')
      } as well.`,
    });
  }
  if (scale === undefined) {
    throw new Refusal({
      where: 'card-offset scale',
      what: 'the scale is missing',
      mend: `${setTo('scale', '12.5 px/mm')}; what one pixel is wide on the card, such as \`0.08 mm\`, will do as well.`,
    });
  }
  return { kind: 'pixel', ...readPixel(scale, 'card-offset scale'), mostTilt };
}

/** The spot in one of the pictures, or what to say of it. */
function spotIn(
  picture: Picture,
  which: 'forward' | 'reverse',
  encoding?: Encoding,
): CardSpot | RefusalParts {
  const read = cardSpot(picture, encoding);
  return read.kind === 'spot' ? read.spot : { where: `${which} picture`, ...lackWords(read.lack) };
}

/** What to say where no spot could be read, and what mends it. */
export function lackWords(lack: SpotLack): Omit<RefusalParts, 'where'> {
  switch (lack) {
    case 'missing':
      return {
        what: 'there is no spot in it',
        mend: 'Unblock that beam, expose longer, and darken the room.',
      };
    case 'ambiguous':
      return {
        what: 'more than one bright thing is in it',
        mend: 'Block the other beam, and cover lamps and reflections, or crop both pictures alike.',
      };
    case 'clipped':
      return {
        what: 'the spot is clipped: its middle is as bright as the camera can tell',
        mend: 'Take both pictures again with less light or a shorter exposure.',
      };
    case 'cut off':
      return {
        what: 'the spot is cut off at the edge of the picture',
        mend: 'Move the camera so that the whole spot is in the picture, and take both again.',
      };
    case 'too large':
      return {
        what: 'the spot fills most of the picture',
        mend: 'Go back with the camera until the spot is less than half as wide as the picture, and take both again.',
      };
    case 'too small':
      return {
        what: 'the spot is only a few pixels wide',
        mend: 'Go nearer with the camera, to 8 pixels a millimetre or more, and take both again.',
      };
    case 'no spot':
      return {
        what: 'what is bright in it is no single spot',
        mend: 'Let one beam alone fall on the card, and darken the room.',
      };
  }
}

function remarksOn(scale: CardScale, words: Readings['words']): readonly string[] {
  return [
    ...(scale.kind === 'pixel' && scale.mostTilt > 0.1
      ? ['How far aslant the camera looks is not told: `corners` and `rectangle` take that doubt away.']
      : []),
    ...(words.looking === undefined
      ? [
          `Right and left are as the picture shows them; from behind the card ${setToWithin('looking', 'upstream')}.`,
        ]
      : []),
  ];
}
