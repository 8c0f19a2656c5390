/** The colour that stands for light of this wavelength (m), and whether anyone could see it. */
export function accentFor(wavelength: number): { readonly colour: string; readonly visible: boolean } {
  const visible = wavelength >= 380e-9 && wavelength <= 780e-9;
  return { colour: visible ? 'var(--accent)' : 'var(--quiet)', visible };
}
