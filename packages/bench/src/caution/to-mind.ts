/** Hidden hazards that no number tells: listed until their question is answered well. */
import type { Basis } from '@coreward/optics';
import { facetPosition } from './at-the-lens.ts';
import { type AtRisk, type CautionLevel, type Hazard, type HazardPlace, withoutNumbers } from './hazard.ts';
import { linesOf } from './light-to-count.ts';
import { wavelengthText } from './limit-texts.ts';
import type { LineOfLight } from './line-of-light.ts';
import type { QuestionName } from './question-names.ts';
import type { Walk } from './walk.ts';
import { asksForInterlock, hasMirrors, isHotEnd } from './what-is-there.ts';

interface ToMind {
  readonly id: string;
  /** Answered with yes it is not said again; `null`: nothing ends it. */
  readonly question: QuestionName | null;
  readonly point: string;
  readonly atRisk: readonly AtRisk[];
  readonly level: CautionLevel;
  readonly what: string;
  readonly doNow: string;
  readonly basis: Basis;
}

const read = (source: string): Basis => ({ evidence: 'read', source });
const practice: Basis = { evidence: 'proposal', source: 'common practice, no source' };

/** Everything to mind on this bench. What was answered with yes is not said again. */
export function toMind(walk: Walk): readonly Hazard[] {
  return listOf(walk)
    .filter(({ question }) => question === null || !walk.answers.yes.has(question))
    .map((one) => asHazard(one, walk));
}

function listOf(walk: Walk): readonly ToMind[] {
  const { laser } = walk.light;
  const unseenLines = linesOf(walk.light).filter(
    ({ seen, name }) => !seen && name !== 'infrared' && name !== 'reference-infrared',
  );
  return [
    ...(unseenLines.length === 0 ? [] : [unseen(unseenLines)]),
    ...(looksDim(laser) ? [dim(walk)] : []),
    ...always.filter(({ id }) => id !== 'bumped-mirror' || hasMirrors(walk.launch)),
    ...(asksForInterlock(walk.light, walk.answers) ? [noInterlock] : []),
    nonBeam(isHotEnd(walk.light)),
  ];
}

function unseen(lines: readonly LineOfLight[]): ToMind {
  const wavelengths = lines.map(({ wavelength }) => wavelengthText(wavelength)).join(' and ');
  return {
    id: 'invisible-light',
    question: 'viewer',
    point: 'anywhere along the beam',
    atRisk: ['eye', 'other people'],
    level: 'serious',
    what: `Invisible light, ${wavelengths}: nobody blinks, and what faint glow there may be warns of nothing.`,
    doNow: 'Find it with a card, camera or detector that you have tried on this very light.',
    basis: read('TROS Laserstrahlung, part 2, 4.1, and a study of blinking, BAuA Fb 1069'),
  };
}

/** Violet and deep red, m. @source our proposal, from the luminous efficiency of the eye, which is below 2 % there */
const looksDim = ({ seen, wavelength }: LineOfLight): boolean =>
  seen && (wavelength < 430e-9 || wavelength > 680e-9);

function dim({ light: { laser } }: Walk): ToMind {
  return {
    id: 'dim-light',
    question: null,
    point: 'anywhere along the beam',
    atRisk: ['eye'],
    level: 'mind',
    what: `Light of ${wavelengthText(laser.wavelength)} looks dim although its hazard is full.`,
    doNow: 'Judge it by a detector, never by how bright it looks.',
    basis: practice,
  };
}

const always: readonly ToMind[] = [
  {
    id: 'both-ends-live',
    question: 'both-ends',
    point: 'both ends of the fibre',
    atRisk: ['eye', 'other people'],
    level: 'mind',
    what: 'Both ends can be live: fibres thought off and found on are a recurring accident.',
    doNow: 'Block or switch off every source before you touch, connect or cleave either end.',
    basis: read('reports of accidents with fibres, as read in laser safety teaching'),
  },
  {
    id: 'bumped-mirror',
    question: 'beam-height',
    point: 'mirrors on their mounts',
    atRisk: ['eye'],
    level: 'mind',
    what: 'A bumped mirror sends the beam upward.',
    doNow: 'Keep the path level and below sitting eyes, and do not bend down to it.',
    basis: practice,
  },
  {
    id: 'unmarked-fibre',
    question: 'marked',
    point: 'every place where the fibre can be opened',
    atRisk: ['eye', 'other people'],
    level: 'mind',
    what: 'Colour and thickness of the jacket say nothing about the power inside.',
    doNow: 'Put a notice and caps wherever it can be opened.',
    basis: read('teaching material on optical fibres: jackets do not tell the power'),
  },
  {
    id: 'glass-pieces',
    question: 'glass-pieces',
    point: 'where fibre is cleaved or stripped',
    atRisk: ['eye', 'skin'],
    level: 'mind',
    what: 'Most injuries with fibres are punctures by pieces of glass.',
    doNow:
      'Wear glasses with side shields, count the pieces into a closed container, do not search with fingers, wash your hands.',
    basis: read('teaching material on optical fibres: most injuries are punctures'),
  },
];

/** For light like class 3B and 4 alone. */
const noInterlock: ToMind = {
  id: 'no-interlock',
  question: 'interlock',
  point: 'laser, its switch and its key',
  atRisk: ['eye', 'other people'],
  level: 'mind',
  what: 'Key, interlock connector, emission light and beam stop are taken to be absent.',
  doNow: 'Give yourself a stop you can close and a switch you can lock before you go on.',
  basis: read('a laser laboratory’s page after IEC 60825: what equipment of class 3B and 4 has'),
};

const nonBeam = (hotEnd: boolean): ToMind => ({
  id: 'non-beam',
  question: 'non-beam',
  point: hotEnd ? 'driver, solvents, floor' : 'driver, floor',
  atRisk: ['skin', 'other people'],
  level: 'mind',
  what: hotEnd
    ? 'Live contacts, solvent near a hot end and cables in the dark hurt without any light.'
    : 'Live contacts and cables in the dark hurt without any light.',
  doNow: hotEnd ? 'Cover contacts, put solvents away, clear the floor.' : 'Cover contacts, clear the floor.',
  basis: practice,
});

function asHazard({ question: _, basis, ...one }: ToMind, walk: Walk): Hazard {
  const end = facetPosition(walk) + walk.launch.fibre.length.value;
  const place: HazardPlace = { part: 'bench', index: null, from: 0, to: end };
  return {
    ...withoutNumbers,
    ...one,
    place,
    quantity: 'none',
    wavelength: null,
    invisible: one.id === 'invisible-light',
    power: null,
    fine: '',
    assumed: [],
    basis: [basis],
  };
}
