import type { Read } from '../document/form.ts';
import { type Report, type Spot, under } from '../document/report.ts';
import { shown } from '../document/shown.ts';
import type { Entry } from '../quantity/quantity.ts';
import { writeValue } from '../units/write.ts';
import type { PathElement } from './launch.ts';
import { partId } from './part-id.ts';
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
    if (lens !== null) mustBend(lens['focal length'], under(under(spot, index + 1), 'lens'), report);
  });
  mustHaveNamesApart(read, spot, report);
  const taken = new Set(read.map((element) => partId(givenName(element)?.name ?? '')));
  const ranks = { M: 0, L: 0, S: 0, F: 0 };
  return read.flatMap((element) => {
    const next = (letter: keyof typeof ranks, name: string | null): string => {
      ranks[letter] += 1;
      if (name !== null) return name;
      // somebody may have called another part M2
      for (let rank = ranks[letter]; ; rank += 1) {
        const own = `${letter}${rank}`;
        if (taken.has(own)) continue;
        taken.add(own);
        return own;
      }
    };
    return elementFrom(element, next);
  });
}

/** Refuses a lens on the way without a focal length, or with a doubt that reaches zero, where it changes its kind. */
function mustBend(focalLength: Entry, spot: Spot, report: Report): void {
  const { value, uncertainty, shape } = focalLength;
  const size = Math.abs(value);
  const { path } = under(spot, 'focal length');
  // a form's range has no hole; no lens of the bench is stronger than this
  if (size < shortestFocalLength) {
    const mend = 'Write `focal length: 50 mm` with your own value, or take the lens out.';
    report.refuse(path, 'no lens has so short a focal length', mend);
    return;
  }
  const reach = shape === 'rectangular' ? uncertainty * Math.sqrt(3) : 4 * uncertainty;
  if (size - reach < shortestFocalLength) {
    const limits = `${writeValue(value, 'length', 4)} within ${writeValue(0.8 * size, 'length', 4)}`;
    const what = 'the doubt about this focal length reaches zero, where the lens would change its kind';
    report.refuse(path, what, `Write limits that keep away from it, such as \`focal length: ${limits}\`.`);
  }
}

type ReadElement = Read<typeof pathElementForm>;

const kinds = ['mirror', 'lens', 'stop', 'filter'] as const;

function givenName(
  element: ReadElement,
): { readonly kind: (typeof kinds)[number]; readonly name: string } | null {
  for (const kind of kinds) {
    const name = element[kind]?.name ?? null;
    if (name !== null) return { kind, name };
  }
  return null;
}

/** Every loss of the ledger is known by its part's name, so that two parts of one name could not be told apart. */
function mustHaveNamesApart(read: readonly ReadElement[], spot: Spot, report: Report): void {
  const seen = new Map<string, string>();
  read.forEach((element, index) => {
    const given = givenName(element);
    if (given === null) return;
    const { kind, name } = given;
    const { path } = under(under(under(spot, index + 1), kind), 'name');
    const id = partId(name);
    const before = seen.get(id);
    if (id === '') {
      report.refuse(
        path,
        `the name ${shown(name)} has no letter and no digit`,
        'Write a name with one at least.',
      );
    } else if (before !== undefined) {
      const what =
        before === name
          ? `two parts of the path are called ${shown(name)}`
          : `${shown(name)} and ${shown(before)} differ in neither letters nor digits`;
      report.refuse(path, what, `Write another name, such as \`name: ${freeName(name, read)}\`.`);
    } else seen.set(id, name);
  });
}

/** `M1 again`, `M1 again 2`: a name that no part of the path has. */
function freeName(name: string, read: readonly ReadElement[]): string {
  const taken = new Set(read.map((element) => partId(givenName(element)?.name ?? '')));
  const plain = partId(name);
  for (let rank = 2; ; rank += 1) {
    const free = `${plain}-${rank}`;
    if (!taken.has(free)) return free;
  }
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
