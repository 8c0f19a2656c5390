import { Refusal } from '../../refusal.ts';
import { readQuantity } from '../../units/read-quantity.ts';
import { carried, type Homography, homographyOf, type Point } from './homography.ts';

/** How pixels of a picture stand for lengths on the card. */
export type CardScale =
  /** One length a pixel everywhere: the camera looks square at the card, or nobody told how far aslant. */
  | {
      readonly kind: 'pixel';
      /** Width of a pixel on the card, m, and its standard uncertainty. */
      readonly pixel: number;
      readonly uncertainty: number;
      /** The camera may look aslant by up to so much, rad. */
      readonly mostTilt: number;
    }
  /** Four corners of a rectangle on the card. */
  | {
      readonly kind: 'rectangle';
      readonly toCard: Homography;
      readonly corners: readonly Point[];
      readonly sides: readonly [width: number, height: number];
      /** Relative standard uncertainty of the sides. */
      readonly sideDoubt: number;
    };

/** A line of a ruler is marked to about so many pixels at each end, and both together (common practice, no source). */
const rulerMarks = 1.5;

/**
 * The scale from two marks on a ruler in the picture and the length between them, such as `40 mm`.
 *
 * @throws {Refusal} if the length is none, or the marks lie in one place
 */
export function readRuler(
  marks: readonly [Point, Point],
  length: string,
  where: string,
): { readonly pixel: number; readonly uncertainty: number } {
  const [from, to] = marks;
  const pixels = Math.hypot(to.x - from.x, to.y - from.y);
  const read = readQuantity(length, 'length');
  if (!read.ok || !(read.value > 0)) {
    throw new Refusal({
      where: `${where} ruler`,
      what: `\`${length}\` is no length between two marks`,
      mend: 'Write what the ruler reads from one mark to the other, such as `40 mm`.',
    });
  }
  if (pixels < 10) {
    throw new Refusal({
      where: `${where} ruler`,
      what: 'both marks lie in one place',
      mend: 'Set them as far apart on the ruler as the picture shows it.',
    });
  }
  const pixel = read.value / pixels;
  const ruler = (read.uncertainty ?? usualScaleDoubt * read.value) / read.value;
  return { pixel, uncertainty: pixel * Math.hypot(ruler, rulerMarks / pixels) };
}

/** Relative standard uncertainty of a scale without one: a ruler to ±1 %, all alike within (rectangular), read by eye. */
export const usualScaleDoubt = 0.007;
/** A camera beside the beam looks at the card from up to so far aslant, rad (common practice, no source). */
export const usualMostTilt = (20 * Math.PI) / 180;
/** A corner is marked to about so many pixels (our choice). */
export const cornerDoubt = 0.7;

/**
 * Width of a pixel on the card from `12.5 px/mm`, `80 µm/px`, `0.08 mm` or `0.08 mm ± 1 %`.
 *
 * @throws {Refusal} if it is none of these
 */
export function readPixel(
  text: string,
  where: string,
): { readonly pixel: number; readonly uncertainty: number } {
  const [, plain, doubt] = /^([^±]*?)\s*(?:(?:±|\+-|\+\/-)\s*(.*))?$/u.exec(text.trim()) ?? [];
  const perLength = /^([\d.,eE+-]+)\s*(?:px|pixels?)\s*(?:\/|per)\s*(\S+)$/u.exec(plain ?? '');
  const length =
    perLength === null ? (plain ?? '').replace(/\s*(?:\/|per)\s*(?:px|pixel)$/u, '') : `1 ${perLength[2]}`;
  const read = readQuantity(length, 'length');
  const count = perLength === null ? 1 : Number(perLength[1]!.replace(',', '.'));
  const relative = doubt === undefined ? null : doubtOf(doubt, perLength === null ? length : null, count);
  if (
    !read.ok ||
    !(count > 0) ||
    !(read.value > 0) ||
    (relative !== null && !(relative >= 0 && relative < 0.5))
  ) {
    throw new Refusal({
      where,
      what: `\`${text}\` is no scale`,
      mend: 'Write pixels a length, such as `12.5 px/mm`, or the length of a pixel, such as `0.08 mm ± 1 %`.',
    });
  }
  const pixel = read.value / count;
  return { pixel, uncertainty: pixel * (relative ?? usualScaleDoubt) };
}

/** A written `± …` as a share: per cent, or in the unit of the value. */
function doubtOf(text: string, length: string | null, count: number): number {
  const percent = /^([\d.,]+)\s*%$/u.exec(text.trim());
  if (percent !== null) return Number(percent[1]!.replace(',', '.')) / 100;
  if (length === null) return Number.parseFloat(text.replace(',', '.')) / count;
  const whole = readQuantity(`${length} ± ${text}`, 'length');
  return whole.ok ? (whole.uncertainty ?? Number.NaN) / whole.value : Number.NaN;
}

/**
 * The scale from four corners, `x1,y1 x2,y2 x3,y3 x4,y4` in pixels and any order, of a rectangle, `40 mm x 30 mm`, whose
 * first side lies more across the picture than up.
 *
 * @throws {Refusal} if they cannot be read, or are no corners of a rectangle
 */
export function readRectangle(corners: string, rectangle: string, where: string): CardScale {
  const numbers = corners
    .split(/[\s,;]+/u)
    .filter((one) => one !== '')
    .map(Number);
  if (numbers.length !== 8 || !numbers.every(Number.isFinite)) {
    throw new Refusal({
      where: `${where} corners`,
      what: `\`${corners}\` are not four corners`,
      mend: 'Write them in pixels from the top left, as `x1,y1 x2,y2 x3,y3 x4,y4`.',
    });
  }
  const parts = rectangle.split(/\s*[x×*]\s*/u);
  const second = parts[1] ?? '';
  const unit = /[^\d.,\s±%]+/u.exec(second)?.[0] ?? '';
  const sides = [/[a-zµ]/iu.test(parts[0] ?? '') ? parts[0]! : `${parts[0]} ${unit}`, second].map((one) =>
    readQuantity(one, 'length'),
  );
  const [width, height] = sides;
  if (
    parts.length !== 2 ||
    width?.ok !== true ||
    height?.ok !== true ||
    !(width.value > 0 && height.value > 0)
  ) {
    throw new Refusal({
      where: `${where} rectangle`,
      what: `\`${rectangle}\` is no rectangle`,
      mend: 'Write its two sides, the one across first, such as `40 mm x 30 mm`.',
    });
  }
  const points = [0, 2, 4, 6].map((i) => ({ x: numbers[i]!, y: numbers[i + 1]! }));
  const doubts = [width, height].map(
    (side) => (side.uncertainty ?? usualScaleDoubt * side.value) / side.value,
  );
  return cardScaleOf(points, [width.value, height.value], Math.max(...doubts), where);
}

/**
 * The scale from the corners of a rectangle of known sides.
 *
 * @throws {Refusal} if three corners lie on a line, or one lies inside the others
 */
export function cardScaleOf(
  points: readonly Point[],
  sides: readonly [number, number],
  sideDoubt: number,
  where: string,
): CardScale {
  const corners = inOrder(points);
  const toCard = homographyOf(corners, cornersOf(sides));
  if (toCard === null || !isConvex(corners)) {
    throw new Refusal({
      where: `${where} corners`,
      what: 'these four points are not the corners of a rectangle seen from aslant',
      mend: 'Mark the four corners of one rectangle on the card, and no three of them on a line.',
    });
  }
  return { kind: 'rectangle', toCard, corners, sides, sideDoubt };
}

/** Of a rectangle about its middle, y up: top left, top right, bottom right, bottom left. */
const cornersOf = ([width, height]: readonly [number, number]): readonly Point[] => [
  { x: -width / 2, y: height / 2 },
  { x: width / 2, y: height / 2 },
  { x: width / 2, y: -height / 2 },
  { x: -width / 2, y: -height / 2 },
];

/** Clockwise as seen, from the one at the top left. */
function inOrder(points: readonly Point[]): readonly Point[] {
  const x = points.reduce((sum, point) => sum + point.x, 0) / 4;
  const y = points.reduce((sum, point) => sum + point.y, 0) / 4;
  const around = [...points].sort((a, b) => Math.atan2(a.y - y, a.x - x) - Math.atan2(b.y - y, b.x - x));
  const first = around.reduce(
    (best, one, i) => (one.x + one.y < around[best]!.x + around[best]!.y ? i : best),
    0,
  );
  return [...around.slice(first), ...around.slice(0, first)];
}

function isConvex(corners: readonly Point[]): boolean {
  const longest = Math.max(...corners.map(({ x, y }) => Math.hypot(x - corners[0]!.x, y - corners[0]!.y)));
  return corners.every((one, i) => {
    const [next, after] = [corners[(i + 1) % 4]!, corners[(i + 2) % 4]!];
    const turn = (next.x - one.x) * (after.y - next.y) - (next.y - one.y) * (after.x - next.x);
    return turn > 1e-3 * longest ** 2;
  });
}

/** Where a place of the picture lies on the card, m: right and up are positive. */
export function onCard(scale: CardScale, { x, y }: Point): Point {
  return scale.kind === 'pixel'
    ? { x: x * scale.pixel, y: -y * scale.pixel }
    : carried(scale.toCard, { x, y });
}

/** What a length across the card would be if each corner lay a little elsewhere: the scales with one coordinate moved. */
export function withMovedCorners(
  scale: Extract<CardScale, { readonly kind: 'rectangle' }>,
): readonly CardScale[] {
  return scale.corners.flatMap((corner, i) =>
    [
      { x: corner.x + cornerDoubt, y: corner.y },
      { x: corner.x, y: corner.y + cornerDoubt },
    ].flatMap((moved): CardScale[] => {
      const corners = scale.corners.with(i, moved);
      const toCard = homographyOf(corners, cornersOf(scale.sides));
      return toCard === null ? [] : [{ ...scale, corners, toCard }];
    }),
  );
}
