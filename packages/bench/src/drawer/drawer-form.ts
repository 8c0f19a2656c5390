import {
  defaulting,
  list,
  map,
  nameForm,
  optional,
  quantity,
  quantityAt,
  required,
  word,
} from '../document/form-builders.ts';
import { namedCollimatorForm } from '../launch/collimator-form.ts';
import { namedFibreForm } from '../launch/fibre-form.ts';
import { namedLaserForm } from '../launch/laser-form.ts';
import { namedReferenceForm, versionKey } from '../launch/launch-form.ts';
import { namedMirrorForm, pathForm } from '../launch/path-form.ts';
import { nominalWavelengthForm } from '../launch/quantity-forms.ts';
import { loadDoubt, responsivityDoubt } from '../launch/usual-doubts.ts';
import { detectorKinds } from './drawer.ts';

const detectorForm = map({
  name: required('what you call it', nameForm),
  kind: required('what it is', word(detectorKinds)),
  responsivity: optional(
    'current for a power',
    quantityAt(
      quantity('responsivity', '> 0 A/W', '10 A/W', responsivityDoubt, '0.4 A/W'),
      nominalWavelengthForm,
      'the wavelength it is given for',
    ),
    'not known, or it makes no sense for this kind',
  ),
  load: optional(
    'the resistor over which its voltage is read',
    quantity('resistance', '> 0 Ω', '1000 MΩ', loadDoubt, '220 Ω'),
    'there is none: an instrument reads its current',
  ),
  'read by': optional('the instrument that reads it, by name', nameForm, 'none that the station knows'),
});

const none = 'you own none, or none that matters here';

/** How a drawer is written. */
export const drawerForm = map({
  coreward: versionKey,
  name: optional('what you call it', nameForm, '`unnamed drawer`; a name is only for people'),
  lasers: defaulting('each as `laser` in a launch', list(namedLaserForm, 'laser'), '[]', none),
  collimators: defaulting(
    'each as `collimator` in a launch',
    list(namedCollimatorForm, 'collimator'),
    '[]',
    none,
  ),
  fibres: defaulting('each as `fibre` in a launch', list(namedFibreForm, 'fibre'), '[]', none),
  mirrors: defaulting('each as `mirror` in a path', list(namedMirrorForm, 'mirror'), '[]', none),
  detectors: defaulting('what measures light', list(detectorForm, 'detector'), '[]', none),
  references: defaulting(
    'each as `reference` in a launch',
    list(namedReferenceForm, 'reference'),
    '[]',
    none,
  ),
  path: optional(
    'the way from any laser to any collimator that a match assumes; as in a launch',
    pathForm,
    'nothing lies between',
  ),
});
