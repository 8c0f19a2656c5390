import { OutOfRange } from '../out-of-range.ts';
import { holds, nanometres } from './closed-range.ts';

/**
 * The one-line limits of a German guide, deliberately cautious: 10 W/m² from 0.5 ms to 10 s, 5·10⁻³ J/m² from 1 ns to
 * 0.5 ms. A check on the tables, not a limit to work with: for visible nanosecond pulses `icnirp2013` is stricter still.
 *
 * @param wavelength m, 315 to 1400 nm
 * @param exposureTime s, 1 ns to 10 s
 * @throws {OutOfRange} outside these
 * @source DGUV Information 203-042, annex 6, table A6.1: read
 */
export function simplifiedEyeLimit(
  wavelength: number,
  exposureTime: number,
): { readonly irradiance: number; readonly radiantExposure: number } {
  const nm = nanometres(wavelength);
  if (!holds({ from: 315, to: 1400 }, nm) || !holds({ from: 1e-9, to: 10 }, exposureTime)) {
    throw new OutOfRange({
      where: 'simplifiedEyeLimit',
      what: `${nm} nm for ${exposureTime} s is outside the simplified table, 315 to 1400 nm and 1 ns to 10 s`,
      mend: 'Use governingLimit.',
    });
  }
  const levelled = { irradiance: 10, radiantExposure: 10 * exposureTime };
  const pulsed = { irradiance: 5e-3 / exposureTime, radiantExposure: 5e-3 };
  // the two meet at 0.5 ms
  return exposureTime >= 0.5e-3 ? levelled : pulsed;
}
