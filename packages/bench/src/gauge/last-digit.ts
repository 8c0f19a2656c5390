/** Steps in which scales are read, between one power of ten and the next. */
const steps = [5, 2.5, 2, 1] as const;

/** Digits that are looked at, from the first of the largest reading on. */
const digits = 6;

/**
 * The step in which readings were read, in their unit: the largest round one of which all are multiples, such as 0.5 of
 * 3, 4.5 and 7. 0 where there is none within six digits.
 */
export function lastDigit(readings: readonly number[]): number {
  const largest = Math.max(0, ...readings.map(Math.abs));
  if (!(largest > 0)) return 0;
  const first = Math.floor(Math.log10(largest));
  for (let exponent = first; exponent > first - digits; exponent--)
    for (const mantissa of steps) {
      const step = mantissa * 10 ** exponent;
      // rounding of numbers in a computer, not of the reader
      if (readings.every((y) => Math.abs(y / step - Math.round(y / step)) < 1e-5)) return step;
    }
  return 0;
}

/** Positions whose spacing changes at this share of the places were read off a scale where they happened to be. */
const changingShare = 0.3;

/**
 * The step in which positions were read off a scale; 0 where they were set, as to marks, evenly or in a few stretches: the
 * common step of such says nothing of how well they were read.
 */
export function positionDigit(positions: readonly number[]): number {
  const step = lastDigit(positions);
  if (step === 0) return 0;
  const places = [...new Set(positions.map((x) => Math.round(x / step)))].sort((a, b) => a - b);
  const spacings = places.slice(1).map((place, i) => place - places[i]!);
  const changes = spacings.filter((spacing, i) => i > 0 && spacing !== spacings[i - 1]).length;
  return changes >= Math.max(2, changingShare * (spacings.length - 1)) ? step : 0;
}
