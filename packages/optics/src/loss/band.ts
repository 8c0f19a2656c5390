/** Vacuum wavelengths, m, from the shortest to the longest; both belong to it. */
export interface Band {
  readonly from: number;
  readonly to: number;
}

/** One part in 10¹² of slack: 1310e-9 and 1310 · 1e-9 are the same wavelength. */
const slack = 1e-12;

/** Whether a vacuum wavelength (m) lies in a band. */
export function isInBand(wavelength: number, { from, to }: Band): boolean {
  return wavelength >= from * (1 - slack) && wavelength <= to * (1 + slack);
}
