/**
 * How well bench people know the numbers they write without saying how well. All of it is common practice, no source,
 * unless the reason says otherwise: starting points for the forecast's interval, to be replaced by measuring.
 */
import { exact, plusMinus, plusMinusAmount, within } from '../document/doubt.ts';

export const asWritten = exact('a setting, not a reading: what is written is what is computed');

export const nominal = exact("the maker's nominal value, to which the other numbers refer");

export const wavelengthDoubt = plusMinusAmount(
  1e-9,
  '1 nm',
  'a diode may lie several nanometres off its label and moves 0.05 to 0.3 nm a kelvin; gas lasers are far better',
);

export const powerDoubt = plusMinus(0.1, 'what labels and simple power meters are good for');

export const beamDiameterDoubt = plusMinus(0.1, 'a label, or a spot judged by eye on a card');

export const divergenceDoubt = plusMinus(0.15, 'labels give typical values');

export const qualityDoubt = within(0.1, 'rarely measured, and never below 1');

export const positionDoubt = plusMinusAmount(5e-3, '5 mm', 'a ruler held beside a beam');

export const waistPositionDoubt = plusMinusAmount(
  20e-3,
  '20 mm or a quarter of the Rayleigh range, whichever is less',
  'the place of a weak waist is hard to see; a tight one shows itself where the beam is 3 % wider',
);

export const distanceDoubt = plusMinus(
  0.02,
  'a ruler along the beam; before a bare facet, behind the last lens, at most a quarter of the Rayleigh range: such a facet is moved until light goes in',
);

export const angleDoubt = plusMinusAmount(Math.PI / 90, '2°', 'mounts placed by eye along a board');

export const reflectanceDoubt = within(
  0.02,
  'catalogue curves, some dust, an angle that is not quite theirs',
);

export const transmissionDoubt = within(0.02, 'catalogue curves, some dust');

export const filterDoubt = plusMinus(0.1, 'filters are sold to about this, and depend on the wavelength');

export const apertureDoubt = plusMinus(0.03, 'a calliper on a round edge');

export const leverDoubt = plusMinus(0.05, 'the pivot lies somewhere inside a ball or a flexure');

export const pitchDoubt = exact('a cut thread keeps its pitch better than anything else here is known');

export const focalLengthDoubt = within(0.02, 'catalogue lenses; the principal plane is not marked');

export const pathFocalLengthDoubt = within(0.05, 'assorted lenses');

export const aberrationDoubt = plusMinus(0.2, 'computed for a perfect lens');

export const surfaceDoubt = plusMinus(0.3, 'coatings differ and depend on the wavelength');

export const coreDiameterDoubt = plusMinus(0.05, 'an ordinary spread of real fibres');

export const apertureNumberDoubt = plusMinusAmount(
  0.01,
  '0.01',
  'an ordinary spread of real fibres, and several definitions in use',
);

export const claddingDiameterDoubt = plusMinus(0.01, 'drawn to better than this; written rounded');

export const fibreLengthDoubt = plusMinus(0.02, 'paced or measured along the lead');

export const attenuationDoubt = plusMinus(0.1, 'as in data sheets, for their wavelength');

export const jointDoubt = plusMinusAmount(
  (0.2 * Math.LN10) / 10,
  '0.2 dB',
  'a joint is another one each time it is mated',
);

export const bendRadiusDoubt = plusMinus(0.1, 'judged by eye');

export const turnsDoubt = exact('counted');

export const loadDoubt = plusMinus(0.02, 'an ordinary resistor or a multimeter');
export const responsivityDoubt = plusMinus(0.1, 'typical curves in data sheets');
