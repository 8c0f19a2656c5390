import { figure, intervalText } from '../ledger/figures.ts';
import { writeDecibel, writeValue } from '../units/write.ts';
import type { FocusPicture } from './focus-picture.ts';
import type { LightLine } from './light-line.ts';
import type { LineDrawing } from './line-drawing.ts';
import type { LinePart } from './line-parts.ts';

/** How to read the drawing, in one or two sentences. */
export function drawingText({ widened, fibre, scale }: LineDrawing, line: LightLine): string {
  const factor = writeValue(widened, 'number', 2);
  const across =
    widened === 1
      ? 'across, too'
      : widened > 1
        ? `across, the light is drawn ${factor} times wider`
        : `across, the light is drawn ${writeValue(1 / widened, 'number', 2)} times narrower`;
  const drawnFibre = (fibre.to - fibre.from) * scale;
  const fibreText =
    line.fibreLength > 2 * drawnFibre
      ? ` The ${writeValue(line.fibreLength, 'length')} of fibre are drawn short.`
      : ' The fibre is not to scale.';
  return `To scale along the path, straightened at the mirrors; ${across}.${fibreText}`;
}

/** What the two halves beside the axis show, as the line runs over the page; null where they are the same. */
export function halvesText(line: LightLine, run: 'across' | 'down'): string | null {
  const differs = line.stretches.some(
    ({ beam: { x, y } }) =>
      x.waistRadius !== y.waistRadius || x.waistPosition !== y.waistPosition || x.quality !== y.quality,
  );
  if (!differs) return null;
  const [first, second] = run === 'across' ? ['Above', 'below'] : ['Left', 'right'];
  return `${first} its axis stands half the horizontal width, ${second} it half the vertical one.`;
}

/** What reaches a part, or what the laser sends: `11.2 mW`. */
export function powerAt(part: LinePart, laserPower: number): string {
  return figure((part.kind === 'laser' ? part.leaving : part.arriving) * laserPower, 'power', 3);
}

/** Where that power lies nine times in ten: `10.2 to 12.1 mW`; null where it is not known, or no doubt would show. */
export function powerRangeAt({ powerRange }: LinePart): string | null {
  return powerRange === null ? null : intervalText(powerRange, 'power');
}

/** The focus picture in words: the spot, what suits the fibre, the core; diameters at 1/e² of intensity. */
export function focusText(focus: FocusPicture): readonly [spot: string, suited: string, core: string] {
  const across = (radius: number) => writeValue(2 * radius, 'length');
  const x = across(focus.spotRadiusX);
  const y = across(focus.spotRadiusY);
  const size = x === y ? `${x} across` : `${x} by ${y}`;
  const aside = Math.hypot(focus.offsetX, focus.offsetY);
  const off = aside < 1e-9 ? '' : `, ${writeValue(aside, 'length', 2)} aside`;
  const suited =
    focus.suits === 'fundamental'
      ? `the mode: suits a spot of ${across(focus.suitedRadius)}`
      : `what fills core and aperture alike: ${across(focus.suitedRadius)}`;
  return [`the spot: ${size}${off}`, suited, `the core: ${across(focus.coreRadius)}`];
}

/** What a part takes in all: `−0.84 dB`; null for one that takes nothing. */
export function lossAt({ arriving, leaving, losses }: LinePart): string | null {
  if (losses.length === 0) return null;
  const loss = writeDecibel(arriving === 0 ? 1 : leaving / arriving);
  return loss === '0 dB' ? null : loss;
}

/** By how much a mirror turns the light: `90°`; null for what does not. */
export function foldText({ fold }: LinePart): string | null {
  return fold === null ? null : writeValue(fold, 'angle', 3, '°');
}
