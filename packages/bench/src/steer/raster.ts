/** Searching for light with the near mirror when the meter shows nothing: only the angle is lost, the offset hardly ever. */

/** What a raster is planned from. SI. */
export interface RasterFacts {
  /** Angle and offset at which ln P has fallen by 1: θc = w_f/f and wc = λf/(πw_f). */
  readonly angleTolerated: number;
  /** Rms of the angle that is lost, one axis, rad. */
  readonly angleLost: number;
  /** The least share of the peak that stands out of the floor: three times the floor. */
  readonly seen: number;
  /** Deflection a turn of M2, rad. */
  readonly horizontalTurn: number;
  readonly verticalTurn: number;
  /** Time from one reading of the meter to the next, s. */
  readonly updateTime: number;
}

/** A search line by line: M2 horizontal is swept, M2 vertical stepped, and back the other way. Angles in turns. */
export interface Raster {
  readonly lines: number;
  /** A sweep goes from −half to +half. */
  readonly halfLength: number;
  /** From line to line with the vertical screw. */
  readonly step: number;
  /** Fastest sweep, turns a second, at which two readings fall inside the light. */
  readonly fastest: number;
  /** Deflection within which light is seen, rad. */
  readonly visibleRadius: number;
  /** How long the sweeps take at that speed, s; a hand is slower. */
  readonly time: number;
}

/** Half of the box searched, in rms of the lost angle (our proposal): 97.5 % of benches lie inside. */
const boxHalf = 2.5;
/** Distance of lines in visible radii, and the share of a diameter that two readings need (our proposals). */
const spacing = 1;
const crossed = 1.4;

/**
 * The radius of deflection within which light is seen: where ln P has fallen to what the meter still shows.
 *
 * @param offsetShare the offset over the one that costs 1 in ln P; 0 for planning
 */
export const visibleRadius = (angleTolerated: number, seen: number, offsetShare = 0): number =>
  angleTolerated * Math.sqrt(Math.max(0, -Math.log(seen) - offsetShare ** 2));

/** @param boxes 1 for the first search, 2 for the one doubled */
export function planRaster(facts: RasterFacts, boxes: 1 | 2 = 1): Raster {
  const radius = visibleRadius(facts.angleTolerated, facts.seen);
  const half = boxHalf * boxes * facts.angleLost;
  const lines = Math.ceil((2 * half) / (spacing * radius)) + 1;
  const halfLength = half / facts.horizontalTurn;
  const fastest = (crossed * radius) / (2 * facts.updateTime) / facts.horizontalTurn;
  return {
    lines,
    halfLength,
    step: (spacing * radius) / facts.verticalTurn,
    fastest,
    visibleRadius: radius,
    time: (lines * 2 * halfLength) / fastest,
  };
}

/** One thing to do in a raster. + is the way of the screw as it was learned, or either way throughout. */
export type RasterMove =
  /** To the corner where it begins, and from the last line back to the middle. */
  | { readonly do: 'corner' | 'back'; readonly horizontal: number; readonly vertical: number }
  /** One line, watching the meter; from the second line on, the vertical screw is stepped first. */
  | { readonly do: 'line'; readonly line: number; readonly horizontal: number; readonly stepFirst: number };

/** The whole path of a raster, from the middle to the middle. */
export function rasterPath({ lines, halfLength, step }: Raster): readonly RasterMove[] {
  const low = (-(lines - 1) / 2) * step;
  const sweeps = Array.from(
    { length: lines },
    (_, line): RasterMove => ({
      do: 'line',
      line,
      horizontal: (line % 2 === 0 ? 2 : -2) * halfLength,
      stepFirst: line === 0 ? 0 : step,
    }),
  );
  const endsRight = lines % 2 === 1;
  return [
    { do: 'corner', horizontal: -halfLength, vertical: low },
    ...sweeps,
    { do: 'back', horizontal: endsRight ? -halfLength : halfLength, vertical: low },
  ];
}
