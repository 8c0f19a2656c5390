const format = (options: Intl.DateTimeFormatOptions): Intl.DateTimeFormat =>
  new Intl.DateTimeFormat('en-GB', options);

const day = format({ day: 'numeric', month: 'short' });
const minute = format({ hour: '2-digit', minute: '2-digit' });
const second = format({ hour: '2-digit', minute: '2-digit', second: '2-digit' });
const fraction = format({ minute: '2-digit', second: '2-digit', fractionalSecondDigits: 3 });
const whole = format({ dateStyle: 'medium', timeStyle: 'medium' });

/**
 * Moments on an axis, as exactly as their distance asks for.
 *
 * @param apart from one to the next, ms
 */
export function axisTimes(moments: readonly number[], apart: number): string[] {
  const fitting = apart >= 43_200_000 ? day : apart >= 60_000 ? minute : apart >= 1_000 ? second : fraction;
  return moments.map((moment) => fitting.format(moment));
}

/** A moment with its day and second: "25 Nov 2026, 11:02:09". */
export const momentText = (moment: number): string => whole.format(moment);
