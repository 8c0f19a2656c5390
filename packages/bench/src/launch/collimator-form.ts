import { defaulting, map, nameForm, optional, quantity, required } from '../document/form-builders.ts';
import { connectorForm } from './connector-form.ts';
import {
  apertureKey,
  focalLengthForm,
  focalShiftKey,
  focusForm,
  glassKey,
  surfacesForm,
} from './lens-forms.ts';
import { aberrationDoubt } from './usual-doubts.ts';

const collimatorKeys = {
  'focal length': required('of the lens before the fibre', focalLengthForm),
  'clear aperture': apertureKey,
  glass: glassKey,
  'focal shift': focalShiftKey,
  surfaces: defaulting('what they reflect', surfacesForm, '{}', 'its keys have defaults of their own'),
  'spherical aberration': defaulting(
    'W040 in waves over the clear aperture, positive where marginal rays focus nearer the lens',
    quantity('waves', '-100', '100', aberrationDoubt, '0.1'),
    '0 ± 0.1',
    'a moulded asphere; common practice, no source. A plain ball or plano-convex lens has far more',
  ),
  focus: defaulting(
    'where the fibre tip stands',
    focusForm,
    'best',
    'one turns it until the most light arrives',
  ),
  connector: defaulting('what its barrel takes', connectorForm, 'none', 'not known'),
} as const;

/** How a collimator is written. */
export const collimatorForm = map({
  name: optional('what you call it', nameForm, 'it has no name'),
  ...collimatorKeys,
});

/** In a drawer a part has a name, or it could not be asked for. */
export const namedCollimatorForm = map({ name: required('what you call it', nameForm), ...collimatorKeys });

/** How what stands behind the far end is written. */
export const outputForm = map({
  collimator: required(
    'the lens behind the far end',
    map({
      'focal length': required('of the lens', focalLengthForm),
      'clear aperture': apertureKey,
      glass: glassKey,
      'focal shift': focalShiftKey,
      surfaces: defaulting('what they reflect', surfacesForm, '{}', 'its keys have defaults of their own'),
      focus: defaulting(
        'where the fibre tip stands',
        focusForm,
        'best',
        "collimated for the launch's own light",
      ),
    }),
  ),
});
