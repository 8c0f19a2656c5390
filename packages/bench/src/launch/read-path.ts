import type { Read } from '../document/form.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import type { PathElement } from './launch.ts';
import type { namedMirrorForm, pathElementForm, pathForm } from './path-form.ts';

type ReadMirror = Omit<Read<typeof namedMirrorForm>, 'name'> & { readonly name: string | null };

/** A mirror as it was read. */
export function mirrorFrom(read: ReadMirror, name: string): PathElement & { kind: 'mirror' } {
  return {
    kind: 'mirror',
    name,
    angle: read.angle,
    reflectance: read.reflectance,
    clearAperture: read['clear aperture'],
    mount: read.mount === null ? null : { lever: read.mount.lever, pitch: read.mount.pitch },
  };
}

/** Of a lens on the way, either sign, m; a ball of 0.2 mm has about as much. */
const shortestFocalLength = 0.1e-3;

/** The path as it was read; what has no name gets one from its kind and its rank among these: M1, M2, L1, … */
export function pathFrom(read: Read<typeof pathForm>, spot: Spot, report: Report): readonly PathElement[] {
  read.forEach(({ lens }, index) => {
    // a form's range has no hole; no lens of the bench is stronger than this
    if (lens !== null && Math.abs(lens['focal length'].value) < shortestFocalLength) {
      const place = under(under(under(spot, index + 1), 'lens'), 'focal length');
      const mend = 'Write `focal length: 50 mm` with your own value, or take the lens out.';
      report.refuse(place.path, 'no lens has so short a focal length', mend);
    }
  });
  const ranks = { M: 0, L: 0, S: 0, F: 0 };
  return read.flatMap((element) => {
    const next = (letter: keyof typeof ranks, name: string | null): string => {
      ranks[letter] += 1;
      return name ?? `${letter}${ranks[letter]}`;
    };
    return elementFrom(element, next);
  });
}

function elementFrom(
  { space, mirror, lens, stop, filter }: Read<typeof pathElementForm>,
  next: (letter: 'M' | 'L' | 'S' | 'F', name: string | null) => string,
): PathElement[] {
  if (space !== null) return [{ kind: 'space', length: space }];
  if (mirror !== null) return [mirrorFrom(mirror, next('M', mirror.name))];
  if (stop !== null) return [{ kind: 'stop', name: next('S', stop.name), diameter: stop.diameter }];
  if (filter !== null) {
    return [{ kind: 'filter', name: next('F', filter.name), transmission: filter.transmission }];
  }
  // An element that could not be read was refused where it stands.
  if (lens === null) return [];
  return [
    {
      kind: 'lens',
      name: next('L', lens.name),
      focalLength: lens['focal length'],
      clearAperture: lens['clear aperture'],
      transmission: lens.transmission,
    },
  ];
}
