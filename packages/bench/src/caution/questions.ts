/** What this bench cannot know by itself: hidden hazards as questions, and what is assumed until they are answered. */
import type { Launch } from '../launch/launch.ts';
import { intervalOf } from '../quantity/distribution.ts';
import { type Answers, answerForms, nothingAnswered } from './answers.ts';
import { laserKey } from './laser-key.ts';
import { lightToCount, mayBeDoubled } from './light-to-count.ts';
import { wavelengthText } from './limit-texts.ts';
import { type QuestionName, questionNames } from './question-names.ts';
import { asksForInterlock, hasMirrors, isHotEnd } from './what-is-there.ts';

/** One question about a bench. */
export interface HazardQuestion {
  /** `green-module:highest-power`: stable for a laser, whatever launch it is in. */
  readonly id: string;
  readonly name: QuestionName;
  readonly asks: string;
  /** What is assumed as long as nobody knows. */
  readonly untilThen: string;
  /** How an answer is written; `not known` is one, too. */
  readonly examples: readonly string[];
}

interface Asked {
  /** Whether it concerns this launch. */
  readonly concerns: (launch: Launch, answers: Answers) => boolean;
  readonly asks: (launch: Launch, answers: Answers) => string;
  readonly untilThen: string;
}

const always = (): boolean => true;
const nameOf = ({ laser }: Launch): string => laser.name ?? 'the laser';
const light = ({ laser }: Launch): string => wavelengthText(laser.wavelength.value);
/** Light nobody sees, of the laser or the reference source, m. */
const unseenLight = ({ laser, reference }: Launch): readonly number[] =>
  [laser.wavelength, ...(reference === null ? [] : [reference.wavelength])]
    .filter((wavelength) => {
      const { low, high } = intervalOf(wavelength, 0.9);
      return low < 400e-9 || high > 700e-9;
    })
    .map(({ value }) => value);

const asked: Readonly<Record<QuestionName, Asked>> = {
  'highest-power': {
    concerns: always,
    asks: (launch) =>
      `What is the most that ${nameOf(launch)} can give, knob at its maximum, warm-up and mode hops included?`,
    untilThen: 'twice the power in the launch is counted',
  },
  emission: {
    concerns: always,
    asks: (launch) => `Is the light of ${nameOf(launch)} continuous or pulsed?`,
    untilThen: 'it is taken as continuous; if it is pulsed, everything here is too mild',
  },
  infrared: {
    concerns: ({ laser }) => mayBeDoubled(laser.wavelength),
    asks: (launch) =>
      `Was the infrared of ${nameOf(launch)} blocked or measured, if it is frequency-doubled or tripled? “none” is for a diode that emits ${light(launch)} itself.`,
    untilThen: 'infrared of twice the rated power is counted along with it',
  },
  'other-light': {
    concerns: always,
    asks: () => 'Does any other light share the path: a pilot, a pump, a second laser?',
    untilThen: 'only the light in the launch is counted',
  },
  profile: {
    concerns: always,
    asks: () => 'Is the beam one smooth round spot, without stripes or bright grains?',
    untilThen: 'twice the power is counted for every distance of the free beam',
  },
  label: {
    concerns: always,
    asks: (launch) => `Which class is on the label of ${nameOf(launch)}?`,
    untilThen: 'the class is estimated from the power; a label counts only if it is higher',
  },
  viewer: {
    concerns: (launch) => unseenLight(launch).length > 0,
    asks: (launch) =>
      `Have you tried a card, camera or detector that shows ${unseenLight(launch).map(wavelengthText).join(' and ')}? Many cameras filter it out.`,
    untilThen: 'you are taken to have nothing that shows where this light is',
  },
  'reference-power': {
    concerns: ({ reference }) => reference !== null,
    asks: () => 'What is the most that the reference source can give?',
    untilThen: 'twice its power in the launch is counted',
  },
  'reference-infrared': {
    concerns: ({ reference }) => reference !== null && mayBeDoubled(reference.wavelength),
    asks: () =>
      'Was the infrared of the reference source blocked or measured, if it is frequency-doubled or tripled? “none” is for a diode that emits its light itself.',
    untilThen: 'infrared of twice its rated power is counted along with it',
  },
  'beam-height': {
    concerns: hasMirrors,
    asks: () => 'Is the whole beam path level and below the eyes of anyone who sits there?',
    untilThen: 'a bumped mirror is taken to send the beam to an eye',
  },
  'both-ends': {
    concerns: always,
    asks: () => 'Can you block or switch off every source yourself before an end is touched, at either end?',
    untilThen: 'either end is taken to be live',
  },
  'fibre-whole': {
    concerns: always,
    asks: () => 'Was the whole fibre checked for breaks and tight bends with dim visible light?',
    untilThen: 'a break is taken to be anywhere',
  },
  'reference-isolated': {
    concerns: ({ reference }) => reference !== null,
    asks: () => 'Is the reference source kept from its own reflections, by an angled end or an isolator?',
    untilThen: 'a flat end is taken to send 4 % back',
  },
  'laser-isolated': {
    concerns: always,
    asks: (launch) => `Does an isolator keep light from running back into ${nameOf(launch)}?`,
    untilThen: 'a face of glass is taken to send 4 % back',
  },
  marked: {
    concerns: always,
    asks: () => 'Is there a notice, and a cap, at every place where the fibre can be opened?',
    untilThen: 'others are taken not to know what is in the fibre; its jacket does not tell',
  },
  'glass-pieces': {
    concerns: always,
    asks: () => 'Are glasses with side shields, a dark mat and a closed container for glass pieces at hand?',
    untilThen: 'they are taken to be missing',
  },
  interlock: {
    concerns: (launch, answers) => asksForInterlock(lightToCount(launch, answers), answers),
    asks: (launch) =>
      `Has ${nameOf(launch)} a key, a connector for an interlock, a light that shows emission, and a beam stop?`,
    untilThen: 'they are taken to be absent, as on a home-made source',
  },
  'non-beam': {
    concerns: always,
    asks: (launch, answers) =>
      isHotEnd(lightToCount(launch, answers))
        ? 'Are live contacts covered, cables out of the way, and solvents away from light and heat?'
        : 'Are live contacts covered and cables out of the way?',
    untilThen: 'they are taken not to be',
  },
  officer: {
    concerns: always,
    asks: () => 'Is someone appointed for laser safety where you work?',
    untilThen: 'no one is taken to be',
  },
  'room-length': {
    concerns: always,
    asks: () => 'How far is it to the farthest wall the beam could reach?',
    untilThen: 'distances are told in full, wall or no wall',
  },
};

/** The questions that concern a launch with what is known of it, in the order of asking. */
export function hazardQuestions(
  launch: Launch,
  answers: Answers = nothingAnswered,
): readonly HazardQuestion[] {
  const key = laserKey(launch);
  return questionNames
    .filter((name) => asked[name].concerns(launch, answers))
    .map((name) => ({
      id: `${key}:${name}`,
      name,
      asks: asked[name].asks(launch, answers),
      untilThen: asked[name].untilThen,
      examples: [...answerForms[name].examples, 'not known'],
    }));
}

/** Whether nobody has answered it yet. */
export function isOpen({ name }: Pick<HazardQuestion, 'name'>, { heard }: Answers): boolean {
  return !heard.has(name);
}
