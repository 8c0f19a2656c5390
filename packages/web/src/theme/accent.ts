import { colourMatching } from './colour-matching.ts';
import { grounds } from './grounds.ts';
import { contrast, hexOf, type LinearColour, linearOf, mixed, shownHue } from './srgb.ts';

/** The colour that stands for some light. */
export interface Accent {
  /** For CSS: one colour on a dark ground, another on a light one. */
  readonly colour: string;
  readonly onDark: string;
  readonly onLight: string;
  /** Whether an eye sees this light at its real strength; where not, the screens say `invisible`. */
  readonly visible: boolean;
}

/**
 * What counts as visible, m. Just beyond it an eye sees a strong beam as a faint glow and misjudges it.
 *
 * @source IEC 60825-1, visible radiation is 400 nm to 700 nm; from memory
 */
const visibleRange = { from: 400e-9, to: 700e-9 } as const;

/** What light without a colour of its own is drawn in: a pale bone. */
const neutral: LinearColour = linearOf('#cfc8ba');

/** Least contrast of an accent on its ground: it serves for text, too (WCAG 2.2, 1.4.3; from memory). */
const leastContrast = 4.6;
/** And the most on a dark ground, where nothing may dazzle an eye that is used to the dark (our own choice). */
const mostOnDark = 8;

/** Beyond it all light looks the same red, m; the fit of the colour-matching functions loses its hue there. */
const reddest = 650e-9;

/** White light mixed in, so that a pure colour does not scream (our own choice). */
const white = 0.06;

/**
 * The accent of a launch: the colour of its light, as near as a screen can show it and light or dark enough to be read.
 *
 * @param wavelength in vacuum, m
 */
export function accentFor(wavelength: number): Accent {
  const visible = wavelength >= visibleRange.from && wavelength <= visibleRange.to;
  const hue = visible
    ? mixed(shownHue(colourMatching(Math.min(wavelength, reddest))), [1, 1, 1], white)
    : neutral;
  const onDark = hexOf(dimmed(readable(hue, [grounds.dark.ground, grounds.dark.raised], [1, 1, 1])));
  const onLight = hexOf(readable(hue, [grounds.light.ground, grounds.light.raised], [0, 0, 0]));
  return { colour: `light-dark(${onLight}, ${onDark})`, onDark, onLight, visible };
}

/** The colour with as much of `towards` in it as reading on all of these grounds needs. */
function readable(colour: LinearColour, on: readonly string[], towards: LinearColour): LinearColour {
  const steps = 50;
  for (let step = 0; step < steps; step += 1) {
    const tried = mixed(colour, towards, step / steps);
    if (on.every((ground) => contrast(tried, linearOf(ground)) >= leastContrast)) return tried;
  }
  return towards;
}

/** A colour that stands no further from the dark ground than the eye likes. */
function dimmed(colour: LinearColour): LinearColour {
  const ground = linearOf(grounds.dark.ground);
  const steps = 50;
  for (let step = 0; step < steps; step += 1) {
    const tried = mixed(colour, [0, 0, 0], step / steps);
    if (contrast(tried, ground) <= mostOnDark) return tried;
  }
  return colour;
}
