import type { Read } from '../document/form.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { collimatorForm, outputForm } from './collimator-form.ts';
import type { Collimator, FocusSetting, OutputCollimator } from './launch.ts';
import { type focusForm, longestWavelengthSetting, type surfacesForm } from './lens-forms.ts';

/** A collimator as it was read, with what its form cannot check. */
export function collimatorFrom(read: Read<typeof collimatorForm>, spot: Spot, report: Report): Collimator {
  const { entry, at } = read['focal length'];
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
