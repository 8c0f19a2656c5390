/** Quantities that occur at several places of a launch. */
import { quantity } from '../document/form-builders.ts';
import { nominal, powerDoubt, wavelengthDoubt } from './usual-doubts.ts';

/** Where bench lasers, glasses and silica fibres are; beyond, nothing here would hold. */
export const wavelengthForm = quantity('length', '200 nm', '12 µm', wavelengthDoubt, '520 nm');

/** The wavelength a part was designed or adjusted for. */
export const nominalWavelengthForm = quantity('length', '200 nm', '12 µm', nominal, '635 nm');

export const powerForm = quantity('power', '> 0 W', '10 kW', powerDoubt, '5 mW');
