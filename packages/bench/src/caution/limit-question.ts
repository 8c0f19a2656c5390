import type { Exposure, Tissue } from '@coreward/optics';
import { Refusal, type RefusalParts } from '../refusal.ts';
import type { Dimension } from '../units/dimension.ts';
import type { QuantityOptions } from '../units/mend.ts';
import { readQuantity } from '../units/read-quantity.ts';

/** A text and the name under which it was asked for; `undefined`: nothing was written. */
export interface Written {
  readonly where: string;
  readonly text: string | undefined;
}

/** What was asked, as people write it. */
export interface LimitTexts {
  readonly wavelength: Written;
  readonly duration: Written;
  /** Full angle under which the source is seen. */
  readonly angle: Written;
  readonly tissue: Tissue;
}

/** What was asked, in SI. Where no angle was written it is `null`, and the smallest source is assumed. */
export interface LimitQuestion {
  readonly exposure: Exposure;
  /** Under which name each part was asked for, for what is refused later. */
  readonly places: Readonly<Record<'wavelength' | 'exposureTime' | 'sourceAngle', string>>;
}

/**
 * Reads a question about a limit: one wavelength, one time, and perhaps the size of the source.
 *
 * @throws {Refusal} with everything that is missing, has no unit, or has an uncertainty
 */
export function readLimitQuestion({ wavelength, duration, angle, tissue }: LimitTexts): LimitQuestion {
  const refused: RefusalParts[] = [];
  const read = (written: Written, dimension: Dimension, options: QuantityOptions): number => {
    const outcome = readOne(written, dimension, options);
    if (typeof outcome === 'number') return outcome;
    refused.push(outcome);
    return Number.NaN;
  };
  const exposure: Exposure = {
    tissue,
    wavelength: read(wavelength, 'length', { positive: true, example: '635 nm' }),
    exposureTime: read(duration, 'time', { positive: true, example: '10 s' }),
    sourceAngle:
      angle.text === undefined ? null : read(angle, 'angle', { positive: 'orZero', example: '1.5 mrad' }),
  };
  if (refused.length > 0) throw new Refusal(refused);
  return {
    exposure,
    places: { wavelength: wavelength.where, exposureTime: duration.where, sourceAngle: angle.where },
  };
}

function readOne(
  { where, text }: Written,
  dimension: Dimension,
  options: QuantityOptions,
): number | RefusalParts {
  if (text === undefined) {
    return { where, what: 'nothing was written for it', mend: `Write \`${where} "${options.example}"\`.` };
  }
  const outcome = readQuantity(text, dimension, options);
  if (!outcome.ok) return { where, what: outcome.what, mend: outcome.mend };
  if (outcome.uncertainty === null || outcome.uncertainty === 0) return outcome.value;
  const plain = /^(.*?)\s*(?:±|\+\/[-−]|within\b)/u.exec(text)?.[1] ?? '';
  const bare = readQuantity(plain, dimension, options);
  return {
    where,
    what: 'a limit is computed for one value, and this has an uncertainty',
    mend: `Write \`${bare.ok ? plain : options.example}\`, and ask again at the ends of its range: the lowest limit counts.`,
  };
}
