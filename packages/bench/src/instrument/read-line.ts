import { type DeviceNumber, deviceNumber } from './device-number.ts';
import { lineFields } from './line-fields.ts';
import type { LineFormat } from './line-format.ts';
import { fromMeter, readingUnitOf } from './meter-unit.ts';

/**
 * The reading in a line, SI; null if there is none in it. A unit in the line goes before that of the format, for many
 * meters change it by themselves, as long as both count the same thing.
 */
export function readLine(line: string, format: LineFormat): DeviceNumber | null {
  const field = lineFields(line, format)[format.column];
  if (field === undefined) return null;
  if (field.over) return { kind: 'over' };
  if (field.value === null) return null;
  const said = deviceNumber(field.value);
  if (said.kind !== 'value') return said;
  const isSame = field.unit !== null && readingUnitOf(field.unit) === readingUnitOf(format.unit);
  return deviceNumber(fromMeter(said.value, isSame && field.unit !== null ? field.unit : format.unit));
}
