import type { Read } from '../document/form.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeInterval, writeValue } from '../units/write.ts';
import type { fibreForm } from './fibre-form.ts';
import type { FibreOfType } from './fibre-types.ts';

/** What a designation is, where a written value is far from it. */
const measures = [
  { key: 'core diameter', of: 'coreDiameter', dimension: 'length' },
  { key: 'numerical aperture', of: 'numericalAperture', dimension: 'number' },
  { key: 'cladding diameter', of: 'claddingDiameter', dimension: 'length' },
] as const;

/**
 * Refuses what no fibre of the designation can be. A measured or printed value near its limits stands: it is this fibre's own,
 * and makers' figures differ by a tenth in what they call core and aperture.
 */
export function mustBeOfItsType(
  read: Read<typeof fibreForm>,
  type: FibreOfType,
  spot: Spot,
  report: Report,
): void {
  const refuse = (key: string, what: string): void =>
    report.refuse(
      under(spot, key).path,
      what,
      `Leave out \`${key}\`; if it is this fibre's own, leave out \`type\`.`,
    );
  for (const key of ['profile', 'material'] as const) {
    if (read[key] !== null && read[key] !== type[key])
      refuse(key, `a fibre of type ${read.type} is ${type[key]}, not ${read[key]}`);
  }
  const coreDiameter = read['core diameter'] ?? type.coreDiameter;
  for (const { key, of, dimension } of measures) {
    const written = read[key];
    const [least, most] = limitsOf(type[of]);
    // a value that was refused already is no number
    if (written === null || Number.isNaN(written.value) || reaches(written, least, most)) continue;
    // narrower than its own core is said with what must fit together
    if (key === 'cladding diameter' && written.value < coreDiameter.value) continue;
    const is = writeInterval(least, most, dimension);
    refuse(
      key,
      `${writeValue(written.value, dimension)} is far from ${is}, which a fibre of type ${read.type} has`,
    );
  }
}

/** The hard limits of a rectangular entry. */
function limitsOf({ value, uncertainty }: Entry): readonly [number, number] {
  const half = Math.sqrt(3) * uncertainty;
  return [value - half, value + half];
}

/** Whether a value comes within three of its uncertainties, or a tenth of it, of the limits. */
function reaches({ value, uncertainty }: Entry, least: number, most: number): boolean {
  const reach = Math.max(3 * uncertainty, 0.1 * value);
  return value + reach >= least && value - reach <= most;
}
