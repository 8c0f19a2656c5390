import { defaulting, list, map, nameForm, optional, quantity, required } from '../document/form-builders.ts';
import {
  angleDoubt,
  apertureDoubt,
  distanceDoubt,
  filterDoubt,
  leverDoubt,
  pathFocalLengthDoubt,
  pitchDoubt,
  reflectanceDoubt,
  transmissionDoubt,
} from './usual-doubts.ts';

const apertureForm = quantity('length', '> 0 mm', '1 m', apertureDoubt, '22 mm');

const clearAperture = optional(
  'diameter of the usable round face',
  apertureForm,
  'not known, taken as large enough',
);

const mountForm = map({
  lever: defaulting(
    "from the pivot to the screw's tip",
    quantity('length', '1 mm', '1 m', leverDoubt, '38 mm'),
    '38 mm within 13 mm',
    'usual one-inch mounts, 25 to 51 mm; common practice, no source',
  ),
  pitch: defaulting(
    "the screw's advance a turn",
    quantity('screwPitch', '1 µm', '10 mm', pitchDoubt, '0.25 mm'),
    '0.29 mm within 0.04 mm',
    'usual fine threads, 0.25 mm to 80 threads an inch (0.32 mm); common practice, no source',
  ),
});

const mirrorKeys = {
  angle: defaulting(
    'angle of incidence',
    quantity('angle', '0°', '89°', angleDoubt, '45°'),
    '45°',
    'how most beams are folded',
  ),
  reflectance: defaulting(
    'fraction of the power that goes on',
    quantity('fraction', '> 0 %', '100 %', reflectanceDoubt, '97 %'),
    '91 % within 8 %',
    'from tired protected aluminium to good protected silver, 83 to 99 %; common practice, no source',
  ),
  'clear aperture': clearAperture,
  mount: optional('its two screws', mountForm, 'fixed: it cannot be used for steering'),
} as const;

const mirrorForm = map({
  name: optional('what you call it', nameForm, 'M1, M2, … in the order of the light'),
  ...mirrorKeys,
});

/** In a drawer a part has a name, or it could not be asked for. */
export const namedMirrorForm = map({ name: required('what you call it', nameForm), ...mirrorKeys });

const lensForm = map({
  name: optional('what you call it', nameForm, 'L1, L2, … in the order of the light'),
  'focal length': required(
    'of a thin lens, negative if it diverges',
    quantity('length', '-100 m', '100 m', pathFocalLengthDoubt, '200 mm'),
  ),
  'clear aperture': clearAperture,
  transmission: defaulting(
    'fraction of the power that goes on',
    quantity('fraction', '> 0 %', '100 %', transmissionDoubt, '99 %'),
    '95 % within 4 %',
    'from two bare to two coated surfaces; common practice, no source',
  ),
});

const stopForm = map({
  name: optional('what you call it', nameForm, 'S1, S2, … in the order of the light'),
  diameter: required('of the round hole', apertureForm),
});

const filterForm = map({
  name: optional('what you call it', nameForm, 'F1, F2, … in the order of the light'),
  transmission: required(
    'fraction of the power that goes on',
    quantity('fraction', '> 0 %', '100 %', filterDoubt, '10 %'),
  ),
});

const otherElement = 'the element is another one';

/** How a part of the path is written. */
export const pathElementForm = map(
  {
    space: optional(
      'free way from the part before it to the part after it; the last one ends at the lens',
      quantity('length', '0 mm', '1 km', distanceDoubt, '220 mm'),
      otherElement,
    ),
    mirror: optional('a flat mirror', mirrorForm, otherElement),
    lens: optional('a thin lens on the way, such as one of a telescope', lensForm, otherElement),
    stop: optional('a round hole', stopForm, otherElement),
    filter: optional('anything that only dims', filterForm, otherElement),
  },
  [
    { needs: ['space'], allows: [] },
    { needs: ['mirror'], allows: [] },
    { needs: ['lens'], allows: [] },
    { needs: ['stop'], allows: [] },
    { needs: ['filter'], allows: [] },
  ],
);

/** How the path is written, in the order of the light. */
export const pathForm = list(pathElementForm);
