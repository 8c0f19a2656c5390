/** A name that people use for a key of ours, and what to do with the number behind it. */
interface OtherName {
  readonly key: string;
  /** 2 for a radius where our key is a diameter, ½ the other way round. */
  readonly factor: 1 | 2 | 0.5;
}

/**
 * What people write where a key of ours belongs, in small letters without spaces, underscores and hyphens, and the keys
 * it may stand for: the first that its part has counts. Slips of spelling are found without this.
 */
const otherNames: Readonly<Record<string, readonly OtherName[]>> = {
  ...named(['m2', 'm²', 'm^2', 'msquared', 'beamquality', 'k'], same('quality')),
  ...named(['f', 'efl', 'effectivefocallength', 'focallengthf', 'focal'], same('focal length')),
  ...named(['na', 'n.a.', 'aperture'], same('numerical aperture'), same('clear aperture')),
  ...named(['ca', 'opening', 'lensdiameter', 'mirrordiameter'], same('clear aperture')),
  ...named(['core', 'coresize', 'corewidth'], same('core diameter')),
  ...named(['coreradius', 'a'], twice('core diameter')),
  ...named(['cladding', 'claddingsize'], same('cladding diameter')),
  ...named(['claddingradius'], twice('cladding diameter')),
  ...named(['waist', 'beamwaist', 'waistsize', '2w0'], same('waist diameter')),
  ...named(['waistradius', 'beamwaistradius', 'w0', 'ω0', 'w₀'], twice('waist diameter')),
  ...named(['beamdiameter', 'spotdiameter', 'spotsize', 'beamsize'], same('diameter')),
  ...named(['beamradius', 'spotradius', 'w'], twice('diameter')),
  ...named(['radius'], twice('diameter'), twice('clear aperture')),
  ...named(['apertureradius', 'semiaperture', 'clearradius'], twice('clear aperture')),
  ...named(['diameter', 'benddiameter'], half('radius'), same('clear aperture')),
  ...named(['bendradius'], same('radius')),
  ...named(['fulldivergence', 'fullangle', 'spread'], same('divergence')),
  ...named(['halfdivergence', 'halfangle', 'divergencehalfangle', 'theta', 'θ'], twice('divergence')),
  ...named(['lambda', 'λ', 'wl', 'light'], same('wavelength')),
  ...named(['aoi', 'angleofincidence', 'incidence'], same('angle')),
  ...named(['r', 'reflectivity', 'reflection'], same('reflectance')),
  ...named(['t', 'transmittance'], same('transmission')),
  ...named(['distance', 'gap', 'd'], same('space')),
  ...named(['lens', 'coupler', 'objective'], same('collimator')),
  ...named(['source'], same('laser')),
};

function same(key: string): OtherName {
  return { key, factor: 1 };
}

function twice(key: string): OtherName {
  return { key, factor: 2 };
}

function half(key: string): OtherName {
  return { key, factor: 0.5 };
}

function named(
  names: readonly string[],
  ...keys: readonly OtherName[]
): Record<string, readonly OtherName[]> {
  return Object.fromEntries(names.map((name) => [name, keys]));
}

const plain = (word: string): string => word.toLowerCase().replace(/[\s_-]+/gu, '');

/** The key among `known` that another name of it stands for, or `null`. */
export function keyByOtherName(written: string, known: readonly string[]): OtherName | null {
  const name = plain(written.slice(0, 60));
  if (!Object.hasOwn(otherNames, name)) return null;
  return otherNames[name]?.find(({ key }) => known.includes(key)) ?? null;
}

/** Names of the mode's width, which is no key: it follows from others. */
export function isModeField(written: string): boolean {
  return ['mfd', 'modefielddiameter', 'modefield', 'modediameter', 'modefieldradius'].includes(
    plain(written),
  );
}

const numbers = /(?<![\d.])\d+(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\d.]|\s*%)/gu;

/** A quantity's text with its numbers times `factor`, shares left as they are; `null` where that needs more thought. */
export function scaledText(text: string, factor: number): string | null {
  if (!/\d/u.test(text) || /[/,×^]/u.test(text)) return null;
  return text.replace(numbers, (number) => String(Number((Number(number) * factor).toPrecision(12))));
}
