import type { Launch } from '../launch/launch.ts';
import { writeValue } from '../units/write.ts';
import { doubtfulEntries } from './entries-of.ts';
import { assumedLever, nearScrews } from './near-screws.ts';
import type { StatedBench } from './stated-bench.ts';

/** What the forecast took for granted because the document does not say; one sentence each. */
export function assumptionsOf(launch: Launch, bench: StatedBench): readonly string[] {
  const said: string[] = [];
  const beam =
    launch.laser.beam.kind === 'round'
      ? [launch.laser.beam.axis]
      : [launch.laser.beam.x, launch.laser.beam.y];
  if (beam.some(({ kind }) => kind === 'diameter')) {
    said.push('The beam’s waist is taken to be at the laser’s exit: only one diameter is given.');
  }
  if (launch.misalignment === null) {
    said.push(
      nearScrews(bench.meeting.arrival).assumed
        ? `No mount is given: the aim is what a hand leaves with a screw of ${writeValue(assumedLever.pitch, 'screwPitch')} a turn on a ${writeValue(assumedLever.lever, 'length')} lever, ${writeValue(assumedLever.distance, 'length')} before the fibre${launch.collimator === null ? '' : '’s lens'}.`
        : 'Walked by hand: what is left of the aim is the finest motion of a finger on the near mirror’s screws, 0.001 to 0.0025 turn.',
    );
  }
  if (launch.collimator !== null && launch.collimator.clearAperture === null) {
    said.push('The collimator’s clear aperture is not given: it is taken to pass the whole beam.');
  }
  if (launch.fibre.attenuation === null) {
    said.push(
      launch.laser.wavelength.value < 700e-9
        ? 'The attenuation is estimated for the wavelength; real fibres differ widely in the visible.'
        : 'The attenuation is estimated for the wavelength; real fibres differ.',
    );
  }
  if (launch.fibre.type !== null) {
    said.push(
      `${launch.fibre.type} is a standard designation: core and aperture are typical of it, not this fibre’s own.`,
    );
  }
  const kept = doubtfulEntries(launch)
    .filter(({ defaulted }) => defaulted === 'value')
    .map(({ key }) => key);
  if (kept.length > 0) said.push(`Left to the defaults, value and doubt: ${byPart(kept)}.`);
  return said;
}

/** `laser.beam (waist position, quality); collimator (surfaces.coating)`: each part named once. */
export function byPart(keys: readonly string[]): string {
  const parts = new Map<string, string[]>();
  for (const key of keys) {
    const [, part = key, rest = ''] =
      /^(path\.\d+\.\w+|laser\.beam|output\.collimator|\w+)\.(.+)$/u.exec(key) ?? [];
    parts.set(part, [...(parts.get(part) ?? []), rest]);
  }
  return [...parts].map(([part, rests]) => `${part} (${rests.join(', ')})`).join('; ');
}
