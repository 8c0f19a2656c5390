/** Parts as they would stand in a document: what reading fills in by itself is left out. */
import { writtenEntry } from '../document/write-entry.ts';
import type { Written } from '../document/write-tree.ts';
import type { Entry } from '../quantity/quantity.ts';
import type { Dimension } from '../units/dimension.ts';
import type {
  Beam,
  BeamAxis,
  Collimator,
  Fibre,
  FocusSetting,
  Laser,
  OutputCollimator,
  PathElement,
  ReferenceSource,
} from './launch.ts';

type Part = { readonly [key: string]: Written | null };

function unlessNull(entry: Entry | null, dimension: Dimension): Written | null {
  return entry === null ? null : writtenEntry(entry, dimension);
}

function unlessEmpty(list: readonly Written[]): Written | null {
  return list.length === 0 ? null : list;
}

/** A laser as a document writes it, in units people use. */
export function writtenLaser({ name, wavelength, power, polarization, beam }: Laser): Part {
  return {
    name,
    wavelength: writtenEntry(wavelength, 'length'),
    power: writtenEntry(power, 'power'),
    polarization,
    beam: writtenBeam(beam),
  };
}

function writtenBeam(beam: Beam): Part {
  if (beam.kind === 'round') return writtenAxis(beam.axis);
  return { x: writtenAxis(beam.x), y: writtenAxis(beam.y), azimuth: writtenEntry(beam.azimuth, 'angle') };
}

function writtenAxis(axis: BeamAxis): Part {
  const quality = writtenEntry(axis.quality, 'number');
  switch (axis.kind) {
    case 'waist':
      return {
        'waist diameter': writtenEntry(axis.waistDiameter, 'length'),
        'waist position': writtenEntry(axis.waistPosition, 'length'),
        quality,
      };
    case 'spread':
      return {
        diameter: writtenEntry(axis.diameter, 'length'),
        at: writtenEntry(axis.at, 'length'),
        divergence: writtenEntry(axis.fullDivergence, 'angle'),
        quality,
      };
    case 'diameter':
      return {
        diameter: writtenEntry(axis.diameter, 'length'),
        at: writtenEntry(axis.at, 'length'),
        quality,
      };
  }
}

/** A mirror as a document writes it. */
export function writtenMirror(mirror: PathElement & { kind: 'mirror' }): Part {
  return {
    name: mirror.name,
    angle: writtenEntry(mirror.angle, 'angle'),
    reflectance: writtenEntry(mirror.reflectance, 'fraction'),
    'clear aperture': unlessNull(mirror.clearAperture, 'length'),
    mount:
      mirror.mount === null
        ? null
        : {
            lever: writtenEntry(mirror.mount.lever, 'length'),
            pitch: writtenEntry(mirror.mount.pitch, 'screwPitch'),
          },
  };
}

/** A part of the path as a document writes it. */
export function writtenElement(element: PathElement): Part {
  switch (element.kind) {
    case 'space':
      return { space: writtenEntry(element.length, 'length') };
    case 'mirror':
      return { mirror: writtenMirror(element) };
    case 'lens':
      return {
        lens: {
          name: element.name,
          'focal length': writtenEntry(element.focalLength, 'length'),
          'clear aperture': unlessNull(element.clearAperture, 'length'),
          transmission: writtenEntry(element.transmission, 'fraction'),
        },
      };
    case 'stop':
      return { stop: { name: element.name, diameter: writtenEntry(element.diameter, 'length') } };
    case 'filter':
      return {
        filter: { name: element.name, transmission: writtenEntry(element.transmission, 'fraction') },
      };
  }
}

/** A collimator as a document writes it. */
export function writtenCollimator(collimator: Collimator): Part {
  return {
    name: collimator.name,
    ...writtenLens(collimator),
    'spherical aberration': writtenEntry(collimator.sphericalAberration, 'waves'),
    focus: writtenFocus(collimator.focus, collimator.focusThread),
    connector: collimator.connector,
  };
}

/** The lens behind the far end as a document writes it. */
export function writtenOutput(collimator: OutputCollimator): Part {
  return { ...writtenLens(collimator), focus: writtenFocus(collimator.focus, null) };
}

function writtenLens(lens: OutputCollimator): Part {
  const at = unlessNull(lens.designWavelength, 'length');
  const { count, reflectance } = lens.surfaces;
  return {
    'focal length': writtenEntry(lens.focalLength, 'length', { at }),
    'clear aperture': unlessNull(lens.clearAperture, 'length'),
    ...(lens.focalShift.kind === 'glass' ? { glass: lens.focalShift.glass } : { 'focal shift': '0' }),
    surfaces: {
      count: String(count),
      coating: reflectance === null ? 'none' : writtenEntry(reflectance, 'fraction'),
    },
  };
}

function writtenFocus(focus: FocusSetting, focusThread: Entry | null): Written {
  const thread = unlessNull(focusThread, 'screwPitch');
  switch (focus.kind) {
    case 'best':
      return thread === null ? 'best' : { 'set for': 'best', thread };
    case 'wavelength':
      return { 'set for': writtenEntry(focus.wavelength, 'length'), thread };
    case 'distance':
      return { 'set for': writtenEntry(focus.distance, 'length'), thread };
  }
}

/** A fibre as a document writes it. */
export function writtenFibre(fibre: Fibre): Part {
  return {
    name: fibre.name,
    type: fibre.type,
    profile: fibre.profile,
    material: fibre.materialSaid ? fibre.material : null,
    'core diameter': writtenEntry(fibre.coreDiameter, 'length'),
    'numerical aperture': writtenEntry(fibre.numericalAperture, 'number'),
    'cladding diameter': writtenEntry(fibre.claddingDiameter, 'length'),
    coating: fibre.coating === 'unknown' ? null : fibre.coating,
    length: writtenEntry(fibre.length, 'length'),
    attenuation: unlessNull(fibre.attenuation, 'attenuation'),
    ends: { in: fibre.ends.in, out: fibre.ends.out },
    connectors: writtenConnectors(fibre.connectors),
    bends: unlessEmpty(
      fibre.bends.map(({ radius, turns }) => ({
        radius: writtenEntry(radius, 'length'),
        turns: writtenEntry(turns, 'turns'),
      })),
    ),
  };
}

function writtenConnectors(connectors: Fibre['connectors']): Part | null {
  const between = unlessEmpty(connectors.between.map(({ loss }) => ({ loss: writtenEntry(loss, 'loss') })));
  const { in: inner, out } = connectors;
  return inner === null && out === null && between === null ? null : { in: inner, out, between };
}

/** A reference source as a document writes it. */
export function writtenReference({ wavelength, power, tolerates }: ReferenceSource): Part {
  return {
    wavelength: writtenEntry(wavelength, 'length'),
    power: writtenEntry(power, 'power'),
    tolerates: unlessNull(tolerates, 'power'),
  };
}
