/** Quantities that occur at several places of a launch. */
import { quantity } from '../document/form-builders.ts';
import { nominal, powerDoubt, wavelengthDoubt } from './usual-doubts.ts';

/** Where bench lasers, glasses and silica fibres are; beyond, nothing here would hold. */
export const wavelengthForm = quantity('length', '200 nm', '12 µm', wavelengthDoubt, '520 nm');

/** The wavelength a part was designed or adjusted for. */
export const nominalWavelengthForm = quantity('length', '200 nm', '12 µm', nominal, '635 nm');

/** Less than anyone can tell from darkness on a bench, more than any fibre of this size bears. */
export const powerForm = quantity('power', '1 pW', '10 kW', powerDoubt, '5 mW');
