/** What the collimator and the lens at the far end have in common. */
import { glassNames } from '@coreward/optics';
import {
  count,
  defaulting,
  either,
  map,
  optional,
  quantity,
  quantityAt,
  word,
} from '../document/form-builders.ts';
import { nominalWavelengthForm } from './quantity-forms.ts';
import { apertureDoubt, asWritten, focalLengthDoubt, pitchDoubt, surfaceDoubt } from './usual-doubts.ts';

/** How a focal length is written, with the light it is given for. */
export const focalLengthForm = quantityAt(
  quantity('length', '0.1 mm', '2 m', focalLengthDoubt, '6.2 mm'),
  nominalWavelengthForm,
  "the wavelength it is given for; left out: the launch's own",
);

/** The clear aperture of a lens. */
export const apertureKey = optional(
  'diameter through which light passes',
  quantity('length', '> 0 mm', '1 m', apertureDoubt, '5 mm'),
  'not known, taken as large enough',
);

/** A glass whose dispersion moves the focus, or `0` for what has none. */
export const glassKey = optional(
  'the lens material, from which follows how the focal length moves with the wavelength',
  word(glassNames),
  'N-BK7, whose dispersion is usual, unless `focal shift: 0` is written',
);

/** That a lens has one focal length for every light. */
export const focalShiftKey = optional(
  '`0` for an achromat or a mirror, instead of `glass`',
  word(['0']),
  'the focal length moves as `glass` says',
);

/** How the surfaces of a lens are written. */
export const surfacesForm = map({
  count: defaulting('glass-air surfaces that the light crosses', count(0, 40), '2', 'a singlet'),
  coating: defaulting(
    '`none`, or the fraction of the power that each surface reflects',
    either(['none'], quantity('fraction', '0 %', '50 %', surfaceDoubt, '0.5 %')),
    '2 % within 2 %',
    'from a perfect coating to bare glass, 0 to 4 %; common practice, no source',
  ),
});

/** Below this a length is a wavelength and not the way from a lens to a fibre; no fibre tip comes so near to a lens. */
export const longestWavelengthSetting = 20e-6;

/** How the distance from lens to fibre is written. */
export const focusForm = either(
  ['best'],
  map({
    'set for': defaulting(
      '`best`, a wavelength (collimated for that light) or the distance from lens to fibre; below 20 µm it is a wavelength',
      either(['best'], quantity('length', '200 nm', '2 m', asWritten, '635 nm')),
      'best',
      'one turns the focus until the most light arrives',
    ),
    thread: optional(
      'advance of the focus thread a turn',
      quantity('screwPitch', '1 µm', '10 mm', pitchDoubt, '0.5 mm'),
      'not known: focus tolerances are given as lengths only',
    ),
  }),
);
