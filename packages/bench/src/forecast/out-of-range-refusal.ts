import type { OutOfRange } from '@coreward/optics';
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import { writeValue } from '../units/write.ts';

/** What a formula's argument is called, and the key of a launch that it follows from; the first that fits counts. */
const follows: readonly (readonly [argument: RegExp, key: (launch: Launch) => string])[] = [
  [/wavelength/iu, () => 'laser.wavelength'],
  [/incidence/iu, (launch) => firstMirror(launch) ?? 'fibre.ends'],
  [/numerical ?aperture/iu, () => 'fibre.numerical aperture'],
  [/bend|curvature/iu, () => 'fibre.bends'],
  [/core|vNumber|\bV\b|mode|lp\d\d/iu, () => 'fibre.core diameter'],
  [/focal|lens|singlet/iu, (launch) => (launch.collimator === null ? 'path' : 'collimator.focal length')],
  [/attenuation|transmission|loss|length/iu, () => 'fibre.length'],
  [/aperture|stop|pupil/iu, (launch) => (launch.collimator === null ? 'path' : 'collimator.clear aperture')],
  [/waist|radius|divergence|quality|beam|spot|m2/iu, () => 'laser.beam'],
];

/** The refusal of a launch for which a formula is not made, at the key that the formula's argument follows from. */
export function outOfRangeRefusal(launch: Launch, { where, what }: OutOfRange): Refusal {
  if (/gaussLegendre/u.test(where)) return tooFarOff(launch);
  const key = follows.find(([argument]) => argument.test(where))?.[1](launch) ?? '';
  return new Refusal({
    where: key,
    what: `no formula covers this: ${inWords(what)}`,
    mend: 'Write a value that a bench could have, or a smaller doubt.',
  });
}

/** A phase that turns more often over the core than the sums have points. */
function tooFarOff({ misalignment, collimator }: Launch): Refusal {
  return new Refusal({
    where: misalignment !== null ? 'misalignment' : collimator !== null ? 'collimator.focus' : 'laser.beam',
    what: 'the light meets the fibre so far out of focus, or so steeply, that it cannot be summed over the core',
    mend: 'Write a smaller misalignment, or a focus nearer to the best.',
  });
}

function firstMirror({ path }: Launch): string | null {
  const mirror = path.find((element) => element.kind === 'mirror');
  return mirror?.kind === 'mirror' ? mirror.angle.key : null;
}

/** `3.71e-6 m` as people say it. */
export function inWords(what: string): string {
  return what
    .replace(/(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?) m\b(?!\/)/gu, (_, metres: string) =>
      writeValue(Number(metres), 'length'),
    )
    .replace(/(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?) rad\b/gu, (_, angle: string) =>
      writeValue(Number(angle), 'angle'),
    );
}
