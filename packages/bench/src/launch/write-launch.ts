import { writtenEntry } from '../document/write-entry.ts';
import { writeTree } from '../document/write-tree.ts';
import type { Launch } from './launch.ts';
import { documentVersion } from './launch-form.ts';
import {
  writtenCollimator,
  writtenElement,
  writtenFibre,
  writtenLaser,
  writtenOutput,
  writtenReference,
} from './write-parts.ts';

/** A launch as a document (YAML 1.2) that `readLaunch` reads back to the same launch, value for value. */
export function writeLaunch(launch: Launch): string {
  const { misalignment, reference, output } = launch;
  return writeTree({
    coreward: documentVersion,
    name: launch.name,
    laser: writtenLaser(launch.laser),
    path: launch.path.map(writtenElement),
    collimator: launch.collimator === null ? 'none' : writtenCollimator(launch.collimator),
    fibre: writtenFibre(launch.fibre),
    reference: reference === null ? null : writtenReference(reference),
    output: output === null ? null : { collimator: writtenOutput(output.collimator) },
    misalignment:
      misalignment === null
        ? null
        : {
            x: writtenEntry(misalignment.offsetX, 'length'),
            y: writtenEntry(misalignment.offsetY, 'length'),
            'tilt x': writtenEntry(misalignment.tiltX, 'angle'),
            'tilt y': writtenEntry(misalignment.tiltY, 'angle'),
            defocus: writtenEntry(misalignment.defocus, 'length'),
          },
  });
}
