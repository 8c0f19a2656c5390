import { mustBeOfThisVersion, mustNotBe, type OtherKind } from '../document/document-kind.ts';
import type { Read } from '../document/form.ts';
import { readForm } from '../document/read-form.ts';
import { documentSpot, type Report, reportOn, throwIfRefused, under } from '../document/report.ts';
import { readTree } from '../document/yaml-tree.ts';
import { withBareFacet } from './bare-facet.ts';
import { mustKnowFibre } from './known-light.ts';
import type { Launch, Misalignment, ReferenceSource } from './launch.ts';
import { launchForm, type misalignmentForm, type referenceForm } from './launch-form.ts';
import { mustKnowGlasses } from './lens-glass.ts';
import { collimatorFrom, outputFrom } from './read-collimator.ts';
import { fibreFrom } from './read-fibre.ts';
import { laserFrom } from './read-laser.ts';
import { pathFrom } from './read-path.ts';

/**
 * A launch document (YAML 1.2 or JSON) as a launch, in SI; what it leaves out is filled in and marked as such.
 *
 * @param file its name, for refusals only
 * @throws {Refusal} with everything that is refused, each with its line, the key and the mend
 */
export function readLaunch(text: string, file: string): Launch {
  const report = reportOn(file);
  const tree = readTree(text, file);
  mustNotBe(drawer, tree, file);
  mustBeOfThisVersion(tree, file);
  const launch = launchFrom(readForm(launchForm, tree, documentSpot, report), report);
  mustKnowGlasses(launch, documentSpot, report);
  mustKnowFibre(launch, documentSpot, report);
  throwIfRefused(report.refusals());
  return withBareFacet(launch);
}

const drawer: OtherKind = {
  is: 'a drawer, not a launch',
  keys: ['lasers', 'collimators', 'fibres', 'mirrors', 'detectors', 'references'],
  mend: 'Write one `laser`, one `collimator` and one `fibre`.',
};

function launchFrom(read: Read<typeof launchForm>, report: Report): Launch {
  const spot = (key: string) => under(documentSpot, key);
  return {
    name: read.name,
    laser: laserFrom(read.laser, spot('laser'), report),
    path: pathFrom(read.path, spot('path'), report),
    collimator:
      read.collimator === 'none' ? null : collimatorFrom(read.collimator, spot('collimator'), report),
    fibre: fibreFrom(read.fibre, spot('fibre'), report),
    reference: read.reference === null ? null : referenceFrom(read.reference),
    output: read.output === null ? null : outputFrom(read.output, spot('output'), report),
    misalignment: read.misalignment === null ? null : misalignmentFrom(read.misalignment),
  };
}

/** A reference source as it was read. */
export function referenceFrom({ wavelength, power, tolerates }: Read<typeof referenceForm>): ReferenceSource {
  return { wavelength, power, tolerates };
}

function misalignmentFrom(read: Read<typeof misalignmentForm>): Misalignment {
  return {
    offsetX: read.x,
    offsetY: read.y,
    tiltX: read['tilt x'],
    tiltY: read['tilt y'],
    defocus: read.defocus,
  };
}
