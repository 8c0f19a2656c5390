import {
  defaulting,
  either,
  map,
  nameForm,
  optional,
  quantity,
  required,
  word,
} from '../document/form-builders.ts';
import { collimatorForm, outputForm } from './collimator-form.ts';
import { fibreForm } from './fibre-form.ts';
import { laserForm } from './laser-form.ts';
import { pathForm } from './path-form.ts';
import { powerForm, wavelengthForm } from './quantity-forms.ts';
import { asWritten, nominal } from './usual-doubts.ts';

/** The version of the documents that is read and written here. */
export const documentVersion = '1';

/** The first key of every document. */
export const versionKey = required('the version of this kind of document', word([documentVersion]));

const referenceKeys = {
  wavelength: required('of the light sent backwards', wavelengthForm),
  power: required('at its exit', powerForm),
  tolerates: optional(
    'the most power that may reach it',
    quantity('power', '> 0 W', '10 kW', nominal, '1 mW'),
    'not known: unplug it before the laser is on',
  ),
} as const;

/** How a reference source is written. */
export const referenceForm = map(referenceKeys);

/** In a drawer a part has a name, or it could not be asked for. */
export const namedReferenceForm = map({ name: required('what you call it', nameForm), ...referenceKeys });

const offsetForm = quantity('length', '-10 mm', '10 mm', asWritten, '1 µm');
const tiltForm = quantity('angle', '-500 mrad', '500 mrad', asWritten, '1 mrad');
const aimed = 'what is not written is exact';

/** How a misalignment at the facet is written; zeros are exact. */
export const misalignmentForm = map({
  x: defaulting("the beam's offset at the facet, horizontal", offsetForm, '0 µm', aimed),
  y: defaulting("the beam's offset at the facet, vertical", offsetForm, '0 µm', aimed),
  'tilt x': defaulting('the direction in which the beam arrives, horizontal', tiltForm, '0 mrad', aimed),
  'tilt y': defaulting('the direction in which the beam arrives, vertical', tiltForm, '0 mrad', aimed),
  defocus: defaulting('facet minus its focus position, positive downstream', offsetForm, '0 µm', aimed),
});

/** How a launch is written. */
export const launchForm = map({
  coreward: versionKey,
  name: defaulting('what you call it', nameForm, 'unnamed launch', 'a name is only for people'),
  laser: required('what sends the light', laserForm),
  path: defaulting(
    "from the laser's exit to the collimator, in the order in which light meets it",
    pathForm,
    '[]',
    'nothing lies between: the collimator stands at the exit',
  ),
  collimator: required(
    'the lens before the fibre, or `none`: the beam as it is meets the facet',
    either(['none'], collimatorForm),
  ),
  fibre: required('what receives the light', fibreForm),
  reference: optional(
    'light sent backwards from the far end',
    referenceForm,
    'there is none; steering then needs another way',
  ),
  output: optional('what stands at the far end', outputForm, 'a bare end'),
  misalignment: optional(
    'how the beam meets the facet',
    misalignmentForm,
    'walked by hand: the hand limit of these mounts is left, as a distribution',
  ),
});
