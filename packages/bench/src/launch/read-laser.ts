import type { Read } from '../document/form.ts';
import { defaultEntry } from '../document/read-entry.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import {
  type axisForm,
  azimuthForm,
  type beamForm,
  type laserForm,
  placeForm,
  qualityForm,
  waistPlaceForm,
} from './laser-form.ts';
import type { Beam, BeamAxis, Laser } from './launch.ts';
import { waistPlace } from './waist-place.ts';

/** A laser as it was read, with what its form cannot check: whether such a beam can exist. */
export function laserFrom(read: Read<typeof laserForm>, spot: Spot, report: Report): Laser {
  return {
    name: read.name,
    wavelength: read.wavelength,
    power: read.power,
    polarization: read.polarization,
    beam: beamFrom(read.beam, read.wavelength, under(spot, 'beam'), report),
  };
}

function beamFrom(read: Read<typeof beamForm>, wavelength: Entry, spot: Spot, report: Report): Beam {
  if (read.x === null || read.y === null) {
    return { kind: 'round', axis: axisFrom(read, wavelength, spot, report) };
  }
  const azimuthSpot = under(spot, 'azimuth');
  return {
    kind: 'elliptic',
    x: axisFrom(read.x, wavelength, under(spot, 'x'), report),
    y: axisFrom(read.y, wavelength, under(spot, 'y'), report),
    azimuth:
      read.azimuth ?? defaultEntry(azimuthForm, '0°', 'x is taken to be horizontal', azimuthSpot, report),
  };
}

function axisFrom(read: Read<typeof axisForm>, wavelength: Entry, spot: Spot, report: Report): BeamAxis {
  if (read['waist diameter'] !== null) {
    const waistDiameter = read['waist diameter'];
    const quality = read.quality ?? usualQuality(Number.POSITIVE_INFINITY, spot);
    const place =
      read['waist position'] ??
      defaultEntry(
        waistPlaceForm,
        '0 mm ± 20 mm',
        "most waists lie near the laser's exit",
        under(spot, 'waist position'),
        report,
      );
    const waistPosition = waistPlace(place, waistDiameter, quality, wavelength);
    const axis = { kind: 'waist', waistDiameter, waistPosition, quality } as const;
    mustBeWiderThanItsLight(axis, wavelength, spot, report);
    return axis;
  }
  const { diameter } = read;
  // Only where the description itself was refused; nothing is said twice about it.
  if (diameter === null) return unknownAxis(spot, report);
  const at =
    read.at ?? defaultEntry(placeForm, '0 mm ± 0 mm', 'where data sheets give it', under(spot, 'at'), report);
  const { divergence } = read;
  if (divergence === null) return fromDiameter(diameter, at, read.quality, wavelength, spot, report);
  const room = largestQuality(diameter, divergence, wavelength);
  const quality = read.quality ?? usualQuality(room, spot);
  const slack = 1 + Math.hypot(relative(diameter), relative(divergence));
  if (room * slack < quality.value) {
    const least = (4 * quality.value * wavelength.value) / (Math.PI * diameter.value);
    report.refuse(
      under(spot, 'divergence').path,
      `light of M² ${tidy(quality.value)} and this diameter spreads by at least ${writeValue(least, 'angle')}`,
      `Write \`divergence: ${writeValue(least * 1.01, 'angle')}\` or more, or a larger diameter.`,
    );
  }
  return { kind: 'spread', diameter, at, fullDivergence: divergence, quality };
}

function fromDiameter(
  diameter: Entry,
  at: Entry,
  written: Entry | null,
  wavelength: Entry,
  spot: Spot,
  report: Report,
): BeamAxis {
  // With its waist at the exit a beam is narrowest at `at` for a Rayleigh range of `at`: d² = 8 M² λ·at/π.
  const room = (Math.PI * diameter.value ** 2) / (8 * wavelength.value * Math.abs(at.value));
  const quality = written ?? usualQuality(room, spot);
  if (room * (1 + 2 * relative(diameter)) < quality.value) {
    const least = Math.sqrt((8 * quality.value * wavelength.value * at.value) / Math.PI);
    report.refuse(
      under(spot, 'diameter').path,
      `a beam with its waist at the laser's exit is at least ${writeValue(least, 'length')} wide there`,
      'Write `waist diameter` and `waist position` instead of `diameter` and `at`.',
    );
  }
  return { kind: 'diameter', diameter, at, quality };
}

/** M² if the beam were at its waist where the diameter was seen: the most that the two allow. */
function largestQuality(diameter: Entry, divergence: Entry, wavelength: Entry): number {
  return (Math.PI * diameter.value * divergence.value) / (4 * wavelength.value);
}

/** Between the ideal beam and an ordinary diode's, as far as there is room. */
function usualQuality(room: number, { key }: Spot): Entry {
  const top = Math.max(1, Math.min(1.4, room));
  return {
    key: `${key}.quality`,
    value: (1 + top) / 2,
    uncertainty: (top - 1) / 2 / Math.sqrt(3),
    shape: top > 1 ? 'rectangular' : 'normal',
    origin: 'assumed',
    defaulted: 'value',
    note: 'from an ideal beam to an ordinary diode, as far as the other numbers leave room',
  };
}

/** The half angle of a beam is M² λ/(π w₀): a waist so narrow that it passes 1 rad is no beam. */
function mustBeWiderThanItsLight(
  { waistDiameter, quality }: BeamAxis & { kind: 'waist' },
  wavelength: Entry,
  spot: Spot,
  report: Report,
): void {
  const least = (2 * quality.value * wavelength.value) / Math.PI;
  if (waistDiameter.value < least) {
    report.refuse(
      under(spot, 'waist diameter').path,
      `light of this wavelength and M² ${tidy(quality.value)} has no beam narrower than ${writeValue(least, 'length')}`,
      `Write \`waist diameter: ${writeValue(least * 1.01, 'length')}\` or more.`,
    );
  }
}

function unknownAxis(spot: Spot, report: Report): BeamAxis {
  const nothing = (form: typeof placeForm, text: string, step: string): Entry =>
    defaultEntry(form, text, 'the beam could not be read', under(spot, step), report);
  return {
    kind: 'waist',
    waistDiameter: nothing(placeForm, '1 mm', 'waist diameter'),
    waistPosition: nothing(waistPlaceForm, '0 mm', 'waist position'),
    quality: nothing(qualityForm, '1', 'quality'),
  };
}

const relative = ({ value, uncertainty }: Entry): number => uncertainty / Math.abs(value);

const tidy = (value: number): string => String(Number(value.toPrecision(3)));
