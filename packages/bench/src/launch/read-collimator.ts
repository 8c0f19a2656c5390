import type { Read } from '../document/form.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import type { collimatorForm, outputForm } from './collimator-form.ts';
import type { Collimator, FocusSetting, OutputCollimator } from './launch.ts';
import { type focusForm, longestWavelengthSetting, type surfacesForm } from './lens-forms.ts';

/** A collimator as it was read, with what its form cannot check. */
export function collimatorFrom(read: Read<typeof collimatorForm>, spot: Spot, report: Report): Collimator {
  const { entry, at } = read['focal length'];
  mustNotBeWiderThanFocused(entry, read['clear aperture'], spot, report);
  return {
    name: read.name,
    focalLength: entry,
    designWavelength: at,
    clearAperture: read['clear aperture'],
    focalShift: focalShiftFrom(read, spot, report),
    surfaces: surfacesFrom(read.surfaces),
    sphericalAberration: read['spherical aberration'],
    focus: focusFrom(read.focus),
    focusThread: typeof read.focus === 'string' ? null : read.focus.thread,
    connector: read.connector === 'none' ? null : read.connector,
  };
}

/** The lens behind the far end as it was read. */
export function outputFrom(
  { collimator: read }: Read<typeof outputForm>,
  spot: Spot,
  report: Report,
): { readonly collimator: OutputCollimator } {
  const { entry, at } = read['focal length'];
  return {
    collimator: {
      focalLength: entry,
      designWavelength: at,
      focalShift: focalShiftFrom(read, under(spot, 'collimator'), report),
      surfaces: surfacesFrom(read.surfaces),
      clearAperture: read['clear aperture'],
      focus: focusFrom(read.focus),
    },
  };
}

/** Light of a plane wave that a lens focuses arrives at less than 90°: the lens's radius is at most its focal length. */
function mustNotBeWiderThanFocused(
  focalLength: Entry,
  clearAperture: Entry | null,
  spot: Spot,
  report: Report,
): void {
  if (clearAperture === null || !(clearAperture.value > 2 * focalLength.value)) return;
  const most = writeValue(1.9 * focalLength.value, 'length', 2);
  report.refuse(
    under(spot, 'clear aperture').path,
    `a lens that bends all light across ${writeValue(clearAperture.value, 'length')} to a focus has no focal length of ${writeValue(focalLength.value, 'length')}`,
    `Write \`clear aperture: ${most}\` or less, or a longer focal length.`,
  );
}

function focalShiftFrom(
  read: Pick<Read<typeof collimatorForm>, 'glass' | 'focal shift'>,
  spot: Spot,
  report: Report,
): Collimator['focalShift'] {
  if (read['focal shift'] === null) return { kind: 'glass', glass: read.glass ?? 'N-BK7' };
  if (read.glass !== null) {
    const what = '`focal shift: 0` says that no glass moves the focus, and `glass` that one does';
    report.refuse(under(spot, 'focal shift').path, what, 'Take out `focal shift` or `glass`.');
  }
  return { kind: 'fixed' };
}

function surfacesFrom({ count, coating }: Read<typeof surfacesForm>): Collimator['surfaces'] {
  return { count, reflectance: coating === 'none' ? null : coating };
}

function focusFrom(read: Read<typeof focusForm>): FocusSetting {
  if (read === 'best' || read['set for'] === 'best') return { kind: 'best' };
  const set = read['set for'];
  return set.value < longestWavelengthSetting
    ? { kind: 'wavelength', wavelength: set }
    : { kind: 'distance', distance: set };
}
