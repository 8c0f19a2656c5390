/** What people answer to the questions about hidden hazards, read into what the walk counts with. */
import { type InfraredKnown, type LaserClass, laserClasses } from '@coreward/optics';
import type { RefusalParts } from '../refusal.ts';
import type { Dimension } from '../units/dimension.ts';
import { readQuantity } from '../units/read-quantity.ts';
import type { QuestionName } from './question-names.ts';

/** How the laser emits. Pulse length s, rate Hz. */
export type Emission =
  | { readonly kind: 'continuous' }
  | { readonly kind: 'pulsed'; readonly pulseDuration: number; readonly repetitionRate: number };

/** Light that shares the path and is not in the launch document. m, W. */
export interface OtherLight {
  readonly wavelength: number;
  readonly power: number;
}

/** `null` and `not known` everywhere mean that nobody answered, which counts as the worse. */
export interface Answers {
  /** The most the driver can give, W. */
  readonly highestPower: number | null;
  readonly emission: Emission | null;
  readonly infrared: InfraredKnown;
  readonly otherLight: OtherLight | 'none' | null;
  readonly profile: 'smooth' | null;
  readonly label: LaserClass | null;
  /** The most the reference source can give, W. */
  readonly referencePower: number | null;
  /** Of a reference source that may be frequency-doubled or tripled. */
  readonly referenceInfrared: InfraredKnown;
  /** m, the longest way to a wall. */
  readonly roomLength: number | null;
  /** The questions answered with yes. */
  readonly yes: ReadonlySet<QuestionName>;
  /** Every answer as it was written, `not known` left out. */
  readonly heard: ReadonlyMap<QuestionName, string>;
}

/** Nobody was asked yet. */
export const nothingAnswered: Answers = {
  highestPower: null,
  emission: null,
  infrared: { kind: 'not known' },
  otherLight: null,
  profile: null,
  label: null,
  referencePower: null,
  referenceInfrared: { kind: 'not known' },
  roomLength: null,
  yes: new Set(),
  heard: new Map(),
};

/** What an answer to one question may look like, and what it does to what is known. */
export interface AnswerForm {
  /** How it is written, for mends and help. */
  readonly examples: readonly [string, ...string[]];
  readonly read: (text: string) => Partial<Answers> | { readonly what: string };
}

/** Said of anything: nobody knows. */
export const notKnown = 'not known';

const yesOrNo = (name: QuestionName): AnswerForm => ({
  examples: ['yes', 'no'],
  read: (text) => {
    if (text === 'yes') return { yes: new Set([name]) };
    if (text === 'no') return {};
    return { what: 'this is neither yes nor no' };
  },
});

const oneValue = (
  dimension: Dimension,
  example: string,
  known: (value: number) => Partial<Answers>,
): AnswerForm => ({
  examples: [example],
  read: (text) => {
    const value = plain(text, dimension, example);
    return typeof value === 'number' ? known(value) : value;
  },
});

const hiddenLight = (known: (infrared: InfraredKnown) => Partial<Answers>): AnswerForm => ({
  examples: ['none', 'blocked', '0.2 mW'],
  read: (text) => {
    if (text === 'none' || text === 'blocked') return known({ kind: 'blocked by a filter' });
    const power = plain(text, 'power', '0.2 mW');
    return typeof power === 'number' ? known({ kind: 'measured', power }) : power;
  },
});

/** A quantity without an uncertainty, or why it cannot be taken. */
function plain(text: string, dimension: Dimension, example: string): number | { readonly what: string } {
  const read = readQuantity(text, dimension, { positive: true, example });
  if (!read.ok) return { what: read.what };
  if (read.uncertainty !== null && read.uncertainty !== 0) {
    return { what: 'one value is wanted, the largest it can be, and this has an uncertainty' };
  }
  return read.value;
}

/** `10 ns at 20 Hz`, `635 nm at 5 mW`: two quantities with an `at` between. */
function pair(
  text: string,
  first: Dimension,
  second: Dimension,
): readonly [number, number] | { readonly what: string } {
  const parts = text.split(/\s+at\s+/u);
  if (parts.length !== 2) return { what: 'two values with `at` between them are wanted' };
  const [a, b] = [plain(parts[0]!, first, ''), plain(parts[1]!, second, '')];
  if (typeof a !== 'number') return a;
  return typeof b === 'number' ? [a, b] : b;
}

/** What lasts longer is an exposure by itself, s. @source the modes of EN 207, DGUV Information 203-042: read */
const longestPulse = 0.25;

/** The form of every answer. */
export const answerForms: Readonly<Record<QuestionName, AnswerForm>> = {
  'highest-power': oneValue('power', '30 mW', (highestPower) => ({ highestPower })),
  emission: {
    examples: ['continuous', '10 ns at 20 Hz'],
    read: (text) => {
      if (text === 'continuous') return { emission: { kind: 'continuous' } };
      const read = pair(text, 'time', 'frequency');
      if ('what' in read) return read;
      const [pulseDuration, repetitionRate] = read;
      if (pulseDuration * repetitionRate >= 1) return { what: 'pulses this long at this rate overlap' };
      if (pulseDuration > longestPulse) return { what: 'pulses this long count as continuous light' };
      return { emission: { kind: 'pulsed', pulseDuration, repetitionRate } };
    },
  },
  infrared: hiddenLight((infrared) => ({ infrared })),
  'other-light': {
    examples: ['none', '635 nm at 5 mW'],
    read: (text) => {
      if (text === 'none') return { otherLight: 'none' };
      const read = pair(text, 'length', 'power');
      return 'what' in read ? read : { otherLight: { wavelength: read[0], power: read[1] } };
    },
  },
  profile: {
    examples: ['smooth', 'uneven'],
    read: (text) => {
      if (text === 'smooth') return { profile: 'smooth' };
      return text === 'uneven' ? {} : { what: 'this is neither smooth nor uneven' };
    },
  },
  label: {
    examples: ['3B', 'none'],
    read: (text) => {
      if (text === 'none') return {};
      const label = laserClasses.find((one) => one.toLowerCase() === text.toLowerCase());
      return label === undefined ? { what: 'there is no such class' } : { label };
    },
  },
  'reference-infrared': hiddenLight((referenceInfrared) => ({ referenceInfrared })),
  'reference-power': oneValue('power', '1 mW', (referencePower) => ({ referencePower })),
  'room-length': oneValue('length', '6 m', (roomLength) => ({ roomLength })),
  viewer: yesOrNo('viewer'),
  'beam-height': yesOrNo('beam-height'),
  'both-ends': yesOrNo('both-ends'),
  'fibre-whole': yesOrNo('fibre-whole'),
  'reference-isolated': yesOrNo('reference-isolated'),
  'laser-isolated': yesOrNo('laser-isolated'),
  marked: yesOrNo('marked'),
  'glass-pieces': yesOrNo('glass-pieces'),
  interlock: yesOrNo('interlock'),
  'non-beam': yesOrNo('non-beam'),
  officer: yesOrNo('officer'),
};

/** One answer added to what is known, or why it cannot be taken. */
export function withAnswer(
  known: Answers,
  name: QuestionName,
  text: string,
  where: string,
): { readonly answers: Answers } | { readonly refused: RefusalParts } {
  const written = text.trim();
  if (written === notKnown) return { answers: known };
  const form = answerForms[name];
  const read = form.read(written);
  if ('what' in read) {
    const or = [...form.examples, notKnown].map((example) => `\`${example}\``).join(' or ');
    return { refused: { where, what: read.what, mend: `Answer ${or}.` } };
  }
  return {
    answers: {
      ...known,
      ...read,
      yes: new Set([...known.yes, ...(read.yes ?? [])]),
      heard: new Map([...known.heard, [name, written]]),
    },
  };
}
