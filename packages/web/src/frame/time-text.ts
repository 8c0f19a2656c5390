/** A moment as people of this place write it: "25 Nov 2026, 11:02". */
export function timeText(moment: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'medium', timeStyle: 'short' }).format(
    new Date(moment),
  );
}

/** The day of a moment: "Wednesday 25 November 2026". */
export function dayText(moment: string): string {
  return new Intl.DateTimeFormat('en-GB', { dateStyle: 'full' }).format(new Date(moment));
}

/** The time of day: "11:02". */
export function hourText(moment: string): string {
  return new Intl.DateTimeFormat('en-GB', { timeStyle: 'short' }).format(new Date(moment));
}
