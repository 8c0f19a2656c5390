import { defaulting, map, nameForm, optional, quantity, required, word } from '../document/form-builders.ts';
import { powerForm, wavelengthForm } from './quantity-forms.ts';
import {
  asWritten,
  beamDiameterDoubt,
  divergenceDoubt,
  positionDoubt,
  qualityDoubt,
  waistPositionDoubt,
} from './usual-doubts.ts';

/** How a beam's 1/e² diameter is written. */
export const diameterForm = quantity('length', '1 µm', '1 m', beamDiameterDoubt, '1.1 mm');
/** How M² is written. */
export const qualityForm = quantity('number', '1', '1000', qualityDoubt, '1.2');

/** How the place of a diameter is written, from the laser's exit. */
export const placeForm = quantity('length', '0 mm', '1 km', positionDoubt, '300 mm');
/** How the place of a waist is written; negative before the exit. */
export const waistPlaceForm = quantity('length', '-1 km', '1 km', waistPositionDoubt, '0 mm');
/** How the turn of a beam's own axes is written. */
export const azimuthForm = quantity('angle', '-360°', '360°', asWritten, '30°');

const elsewhere = 'another description of the beam is written instead';

/** One transverse axis, or both at once. */
const axisKeys = {
  'waist diameter': optional(
    '1/e² diameter of intensity where the beam is narrowest',
    diameterForm,
    elsewhere,
  ),
  'waist position': optional(
    "where the beam is narrowest, along the path from the laser's exit, positive downstream",
    waistPlaceForm,
    'with `waist diameter`: 0 mm, for most waists lie near the exit; ± 20 mm or a quarter of the Rayleigh range, whichever is less',
  ),
  diameter: optional('1/e² diameter of intensity where it was seen', diameterForm, elsewhere),
  at: optional(
    "where that diameter was seen, along the path from the laser's exit",
    placeForm,
    "with `diameter`: 0 mm, the laser's exit, where data sheets give it",
  ),
  divergence: optional(
    'full angle of spread at 1/e² of intensity, far away',
    quantity('angle', '> 0 mrad', '2 rad', divergenceDoubt, '1 mrad'),
    "with `diameter`: the waist is taken to be at the laser's exit",
  ),
  quality: optional(
    'M²; diameters are D4σ where it is above 1',
    qualityForm,
    '1.2 within 0.2, from the ideal beam to an ordinary diode; drawn in to what diameter and divergence leave room for',
  ),
} as const;

const waistVariant = { needs: ['waist diameter'], allows: ['waist position', 'quality'] } as const;
const diameterVariant = { needs: ['diameter'], allows: ['at', 'divergence', 'quality'] } as const;

/** How one axis of a beam is written. */
export const axisForm = map(axisKeys, [waistVariant, diameterVariant]);

/** How a beam is written, round or axis by axis. */
export const beamForm = map(
  {
    ...axisKeys,
    x: optional('the beam in its own x direction, if x and y differ', axisForm, 'the beam is round'),
    y: optional('the beam in its own y direction', axisForm, 'the beam is round'),
    azimuth: optional(
      'turns x and y about the axis, counter-clockwise seen along the light',
      azimuthForm,
      'with `x` and `y`: 0°',
    ),
  },
  [waistVariant, diameterVariant, { needs: ['x', 'y'], allows: ['azimuth'] }],
);

const laserKeys = {
  wavelength: required('in vacuum', wavelengthForm),
  power: required('at the exit', powerForm),
  polarization: defaulting(
    '`linear` or `random`',
    word(['linear', 'random']),
    'random',
    'the word that promises least',
  ),
  beam: required('its shape', beamForm),
} as const;

/** How a laser is written. */
export const laserForm = map({
  name: optional('what you call it', nameForm, 'it has no name'),
  ...laserKeys,
});

/** In a drawer a part has a name, or it could not be asked for. */
export const namedLaserForm = map({ name: required('what you call it', nameForm), ...laserKeys });
