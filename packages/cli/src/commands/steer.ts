import {
  type Cards,
  cardsAt,
  cardsByRuler,
  fieldText,
  type Launch,
  type OffsetRead,
  ordinaryMeter,
  Refusal,
  readBeforeSteer,
  readDistance,
  readLaunch,
  readReadingError,
  rulerLimits,
  type Section,
  type SteerLayout,
  type SteerNow,
  type SteerPlan,
  servingWords,
  startWords,
  steerAnswerWords,
  steerLayout,
  steerMeterWords,
  steerPlan,
  steerVerdictWords,
  stepCautions,
  stepSections,
  unsteeredBench,
  usualCards,
} from '@coreward/bench';
import type { Command } from 'commander';
import { keptFile, notKept } from '../kept-file.ts';
import { readDocument } from '../read-document.ts';
import { seedFrom } from '../seed-option.ts';
import type { Shell } from '../shell.ts';
import { steeredByTyping } from '../steer-by-typing.ts';
import { sectionsText } from '../text/sections-text.ts';

interface SteerFlags {
  readonly near?: string;
  readonly far?: string;
  readonly reads?: string;
  readonly practice?: string;
  readonly keep?: string;
  readonly json?: boolean;
}

/** `coreward steer FILE [--near LENGTH] [--far LENGTH] [--reads LENGTH] [--practice SEED] [--keep FILE] [--json]` */
export function addSteer(program: Command, shell: Shell): void {
  program
    .command('steer')
    .summary('lay the beam onto the fibre’s axis, with two cards and reverse light')
    .description(
      'Learns the four screws, takes the offsets of the laser’s spot from the reverse spot on two cards as you type them, in ' +
        'millimetres, and says what to turn until both lie over each other; then it looks for light, and searches line by line ' +
        'if there is none. What must be read before reference light is sent backwards comes first. --practice SEED steers a ' +
        'simulated bench: an empty line lets its hand do the step, and without a keyboard it steers to the end. Offsets are ' +
        'read far better by a camera: that is done in the browser.',
    )
    .argument('<file>', 'a launch document')
    .option('--near <length>', 'from the lens to the near card, by ruler')
    .option('--far <length>', 'from M1 towards the laser to the far card, by ruler')
    .option('--reads <length>', 'how well an offset is read, such as "0.3 mm"')
    .option('--practice <seed>', 'a simulated bench; the same whole number hides the same bench')
    .option('--keep <file>', 'keep what is done in a file, and go on with what it keeps')
    .option('--json', 'print how it went as JSON, in metres and turns')
    .action(async (path: string, flags: SteerFlags) => {
      const { practice, keep, json = false } = flags;
      const document = await readDocument(path, shell);
      const launch = readLaunch(document.text, document.file);
      const layout = steerLayout(launch);
      const cards = cardsFrom(layout, flags);
      const seed = practice === undefined ? null : seedFrom(practice);
      const plan = steerPlan(launch, cards, layout, ordinaryMeter);
      const begun = JSON.stringify({ coreward: 1, keeps: 'steer', cards, seed, launch: document.text });
      const kept = keep === undefined ? notKept : await keptFile(keep, begun, shell);
      shell.talk(sectionsText(before(launch, plan, seed === null), shell));
      const bench = seed === null ? null : { hidden: unsteeredBench(launch, seed), seed };
      const now = await steeredByTyping(plan, bench, { kept, path: keep ?? '' }, shell);
      shell.print(json ? `${JSON.stringify(asJson(now), null, 2)}\n` : sectionsText(told(now), shell));
    });
}

/**
 * Where the cards stand; what is not said is as usual.
 *
 * @throws {Refusal} with every length that cannot be
 */
function cardsFrom(layout: SteerLayout, { near, far, reads }: SteerFlags): Cards {
  const usual = usualCards(layout);
  const ruler = cardsByRuler(layout, usual);
  const { beforeLens, behindFarMirror } = rulerLimits(layout);
  const given = [
    lengthFrom('--near', near, ruler.beforeLens, (text) =>
      readDistance(text, beforeLens.least, beforeLens.most),
    ),
    lengthFrom('--far', far, ruler.behindFarMirror, (text) =>
      readDistance(text, behindFarMirror.least, behindFarMirror.most),
    ),
    lengthFrom('--reads', reads, usual.readingError, readReadingError),
  ] as const;
  const refused = given.flatMap((one) => (typeof one === 'number' ? [] : one.parts));
  if (refused.length > 0) throw new Refusal(refused);
  const [lens, mirror, error] = given.map((one) => (typeof one === 'number' ? one : 0));
  return cardsAt(layout, { beforeLens: lens!, behindFarMirror: mirror! }, error!);
}

function lengthFrom(
  where: string,
  written: string | undefined,
  usual: number,
  readAs: (text: string) => OffsetRead,
): number | Refusal {
  if (written === undefined) return usual;
  const read = readAs(written);
  if (read.ok) return read.value;
  return new Refusal({ where, what: read.what, mend: read.mend });
}

/** The cautions of a real bench, what is to be expected, and where the cards stand. */
function before(launch: Launch, plan: SteerPlan, isReal: boolean): readonly Section[] {
  const cautions = readBeforeSteer.flatMap((step) => stepSections(stepCautions(launch, step)));
  const { beforeLens, behindFarMirror } = cardsByRuler(plan.layout, plan.cards);
  const stand = `One ${fieldText(beforeLens)} before the lens, the other ${fieldText(behindFarMirror)} behind M1 towards the laser, each read to ± ${fieldText(plan.cards.readingError)}. As far behind M1 as there is room: the distance of the cards decides.`;
  const texts = (all: readonly string[]) => all.map((text) => ({ kind: 'text' as const, text }));
  return [
    ...(isReal ? cautions : []),
    { heading: 'Where the cards stand', blocks: texts([stand, servingWords(plan)]) },
    {
      heading: 'What the walk will begin with',
      blocks: texts([...startWords(plan), steerMeterWords(plan.meter)]),
    },
  ];
}

function told({ moves, verdict }: SteerNow): readonly Section[] {
  const end = verdict === null ? null : steerVerdictWords(verdict);
  return [
    {
      heading: 'What was done',
      blocks: [
        {
          kind: 'list',
          numbered: true,
          items: moves.map(({ step, answer }) => steerAnswerWords(step, answer)),
        },
      ],
    },
    {
      heading: end === null ? 'Stopped on the way' : 'How it ended',
      blocks: (end === null ? ['The steer goes on from here.'] : [end.order, ...end.mind]).map((text) => ({
        kind: 'text' as const,
        text,
      })),
    },
  ];
}

/** Offsets in metres, turns as they were asked. */
const asJson = ({ moves, verdict }: SteerNow) => ({
  coreward: 1,
  moves: moves.map(({ step, answer }) => ({
    step: step.kind,
    ...('screw' in step ? { screw: step.screw } : {}),
    ...(step.kind === 'turn' ? { turns: step.turns.value } : {}),
    outcome: answer.outcome,
    ...(answer.outcome === 'went' ? { to: answer.to } : {}),
    ...(answer.outcome === 'read' ? { near_m: answer.offsets.near, far_m: answer.offsets.far } : {}),
  })),
  ended: verdict,
});
