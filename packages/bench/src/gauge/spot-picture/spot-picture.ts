import { lightFromSrgb } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings, Setting } from '../gauge.ts';
import { setTo, setToWithin } from '../setting-words.ts';
import { findSpot, type Seen } from './find-spot.ts';
import { type Encoding, type PlaneRead, planeOf } from './plane.ts';
import { answersOf, type Scale } from './spot-answers.ts';
import { lackOf, nothing } from './spot-lack.ts';

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
      example: '5.2 µm',
      needed: false,
      otherNames: ['pixel pitch', 'pitch', 'pixel size'],
      what: 'width of one pixel where the spot is',
    },
    {
      name: 'ruler pixels',
      dimension: 'number',
      example: '480',
      needed: false,
      what: 'pixels along a ruler in the picture, for the scale instead of `pixel`',
    },
    {
      name: 'ruler length',
      dimension: 'length',
      example: '40 mm',
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
  const seen = findSpot(read.plane, read.step);
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
