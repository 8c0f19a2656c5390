import { limitSetNames } from '@coreward/optics';
import type { Block, Row, Section } from '../ledger/section.ts';
import type { Cautions } from './cautions.ts';
import { shortReachText, timesText } from './figures-of-caution.ts';
import { type AtRisk, type CautionLevel, type Hazard, isOfParts } from './hazard.ts';
import { timeText, wavelengthText, weakestMark } from './limit-texts.ts';
import { isOpen } from './questions.ts';
import { sourcesSection } from './sources-section.ts';
import { afterExposure, nobodyAppointed, standingLine } from './standing-line.ts';
import type { StepCautions } from './step-cautions.ts';
import { lineSummaries } from './summary.ts';
import { alignmentText, classText, eyewearText } from './summary-texts.ts';

/**
 * The cautions of a bench in words and tables: the worst first with what to do now, every place, what to mind, eyewear,
 * what is asked, what was assumed, what it rests on, and who decides.
 */
export function cautionSections(cautions: Cautions): readonly Section[] {
  const { walk, hazards } = cautions;
  return [
    worstSection(cautions),
    tableSection(hazards, walk.facts.roomLength),
    doSection(hazards),
    ...mindSection(hazards),
    lightAndEyewear(cautions),
    ...questionsSection(cautions),
    ...assumedSection(hazards),
    sourcesSection(
      hazards.flatMap(({ basis }) => basis),
      'a number has the mark of its weakest source',
    ),
    happened,
    decidesSection(cautions),
  ];
}

/** The cautions of one step: what to do, this bench's numbers, where it can hurt, and who decides. */
export function stepSections({
  number,
  title,
  orders,
  numbers,
  hazards,
  cautions,
}: StepCautions): readonly Section[] {
  const { walk } = cautions;
  const [worst] = hazards;
  return [
    {
      heading: `Step ${number} with ${walk.launch.name}: ${title}`,
      blocks: [
        ...(worst === undefined ? [] : leading(worst, '')),
        { kind: 'list', numbered: true, items: orders },
      ],
    },
    ...(numbers.length === 0 ? [] : [{ heading: 'With the numbers of this bench', blocks: [list(numbers)] }]),
    ...(hazards.some(isNumbered) ? [tableSection(hazards, walk.facts.roomLength)] : []),
    ...mindSection(hazards),
    ...assumedSection(hazards),
    happened,
    decidesSection(cautions),
  ];
}

const text = (one: string): Block => ({ kind: 'text', text: one });
const list = (items: readonly string[]): Block => ({ kind: 'list', numbered: false, items });

/** The first lines: what is worst, or that nothing came out above a limit, and what to do now. */
function leading({ level, what, doNow }: Hazard, otherwise: string): readonly Block[] {
  const isAbove = level !== 'mind' && level !== 'under the limit';
  return [
    text(isAbove ? `Worst, ${level}: ${what}` : `${otherwise}To mind first: ${what}`),
    text(`Do now: ${doNow}`),
  ];
}

/** What to do when light has hit an eye. */
const happened: Section = { heading: 'If it has happened', blocks: [text(afterExposure)] };

/** What a tired person reads: where it is worst, how far that reaches, what to do now. */
function worstSection({ walk, hazards }: Cautions): Section {
  const [worst] = hazards;
  const unseen = hazards.some(({ invisible }) => invisible);
  return {
    heading: `Cautions for ${walk.launch.name}`,
    blocks: [
      ...(worst === undefined
        ? []
        : [
            ...leading(worst, 'Nothing here comes out above its limit for the time assumed. '),
            ...(worst.fine === '' ? [] : [text(worst.fine)]),
          ]),
      ...(unseen ? [text('There is invisible light on this bench: what looks dark may be live.')] : []),
    ],
  };
}

/** What is only to be minded, or has no number at all, is told in words and not in the table. */
const isNumbered = ({ level, quantity }: Hazard): boolean => level !== 'mind' && quantity !== 'none';

const levelTitles: Readonly<Record<CautionLevel, string>> = {
  'not evaluated': 'Not evaluated: count it as the worst',
  severe: 'Severe: ten times the limit or more',
  serious: 'Serious: above the limit',
  mind: 'To mind',
  'under the limit': 'Under the limit for the time assumed',
};

const titleOf = (hazard: Hazard): string =>
  hazard.level === 'not evaluated' && isOfParts(hazard)
    ? 'Not evaluated, a part: count it as severe'
    : levelTitles[hazard.level];

function tableSection(hazards: readonly Hazard[], roomLength: number | null): Section {
  // what is only to be minded has no numbers, and a section of its own
  const numbered = hazards.filter(isNumbered);
  // in the order of the hazards themselves: a part that is not evaluated stands behind what is above a limit
  const rows = numbered.flatMap((hazard, i): readonly Row[] => {
    const before = numbered[i - 1];
    const title = titleOf(hazard);
    const begins = before === undefined || titleOf(before) !== title;
    return [...(begins ? [{ kind: 'heading' as const, text: title }] : []), rowOf(hazard, roomLength)];
  });
  return {
    heading: 'Place by place, worst first',
    blocks: [
      {
        kind: 'table',
        columns: [
          { heading: 'place', align: 'left' },
          { heading: 'at risk', align: 'left' },
          { heading: 'light', align: 'right' },
          { heading: 'reaches', align: 'right' },
          { heading: 'times\nlimit', align: 'right' },
          { heading: 'limit for', align: 'left' },
          { heading: '', align: 'left' },
        ],
        rows,
      },
      text(
        'All of it estimates. A distance is up to where the light is above the eye limit; beams count by their 1/e diameter and ' +
          'divergence, fibre cones by mode or at 5 % of the peak.',
      ),
    ],
  };
}

function rowOf(hazard: Hazard, roomLength: number | null): Row {
  const { point, atRisk, wavelength, basis } = hazard;
  // where 100 s are allowed less, they stand in the table
  const { hazardDistance, timesLimit, limitSet, exposureTime } = hazard.longer ?? hazard;
  const shortTime = exposureTime === null ? '' : `, ${timeText(exposureTime)}`;
  return {
    kind: 'cells',
    cells: [
      `  ${point}`,
      atRisk.map((one) => shortRisk[one]).join(', '),
      wavelength === null ? '' : wavelengthText(wavelength),
      hazardDistance === null ? '' : shortReachText(hazardDistance, roomLength),
      timesLimit === null ? '' : timesText(timesLimit).replace(/ times$/u, ''),
      limitSet === null ? '' : `${limitSetNames[limitSet]}${shortTime}`,
      `[${weakestMark(basis)}]`,
    ],
  };
}

const shortRisk: Readonly<Record<AtRisk, string>> = {
  eye: 'eye',
  'other people': 'others',
  skin: 'skin',
  source: 'source',
  facet: 'facet',
};

/** What to do where it is above a limit; the same advice is said once, and each place of it. */
function doSection(hazards: readonly Hazard[]): Section {
  const above = hazards.filter(({ level }) => level !== 'mind' && level !== 'under the limit');
  const byAdvice = new Map<string, Set<string>>();
  for (const { doNow, point } of above) byAdvice.set(doNow, (byAdvice.get(doNow) ?? new Set()).add(point));
  return {
    heading: 'What to do',
    blocks:
      above.length === 0
        ? [text('Nothing here comes out above its limit for the time assumed.')]
        : [list([...byAdvice].map(([doNow, points]) => `${doNow} (${[...points].join('; ')})`))],
  };
}

function mindSection(hazards: readonly Hazard[]): readonly Section[] {
  const items = hazards
    .filter((hazard) => !isNumbered(hazard))
    .map(({ what, doNow, fine }) => [what, doNow, fine].filter((part) => part !== '').join(' '));
  return items.length === 0 ? [] : [{ heading: 'To mind, too', blocks: [list(items)] }];
}

/** Every line of light: how it would be treated, eyewear for it, and the power to align with. */
export function lightAndEyewear({ walk }: Pick<Cautions, 'walk'>): Section {
  const summaries = lineSummaries(walk);
  const [laser] = summaries;
  return {
    heading: 'The light, eyewear, and the power to align with',
    blocks: [
      list([
        ...summaries.map(classText),
        // a reaction on purpose is for trained people, and stands in the data only
        ...summaries.flatMap(({ line, eyewear }) =>
          eyewear.filter(({ exposureTime }) => exposureTime !== 2).map((one) => eyewearText(line, one)),
        ),
        alignmentText(laser?.alignment ?? null),
      ]),
      text(
        'Eyewear is needed for these very wavelengths and powers, one density for each. It is the last measure, after less power, ' +
          'enclosing and blocking, and none is made for looking into a beam. A scale number of EN 207 also takes a test of damage in ' +
          'the real spot.',
      ),
    ],
  };
}

function questionsSection({ questions, walk }: Cautions): readonly Section[] {
  const open = questions.filter((question) => isOpen(question, walk.answers));
  if (open.length === 0) return [];
  return [
    {
      heading: 'What this bench cannot tell: please answer',
      blocks: [
        list(
          open.map(
            ({ name, asks, untilThen, examples }) =>
              `${name}: ${asks} Until then ${untilThen}. (${examples.join(' | ')})`,
          ),
        ),
      ],
    },
  ];
}

function assumedSection(hazards: readonly Hazard[]): readonly Section[] {
  const items = [...new Set(hazards.flatMap(({ assumed }) => assumed))];
  const heading = 'Taken for granted; the result may be too mild where it is wrong';
  return items.length === 0 ? [] : [{ heading, blocks: [list(items)] }];
}

function decidesSection({ walk }: Cautions): Section {
  return {
    heading: 'Who decides',
    blocks: [text(standingLine), ...(walk.answers.yes.has('officer') ? [] : [text(nobodyAppointed)])],
  };
}
