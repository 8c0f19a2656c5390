import type { Read } from '../document/form.ts';
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

/** The path as it was read; what has no name gets one from its kind and its rank among these: M1, M2, L1, … */
export function pathFrom(read: Read<typeof pathForm>): readonly PathElement[] {
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
