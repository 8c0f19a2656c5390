import {
  answerOf,
  beforeWalkTexts,
  estimateText,
  type Launch,
  moveText,
  type PracticeBench,
  practiceBenchOf,
  practise,
  Refusal,
  readingText,
  readLaunch,
  remainingText,
  remarkText,
  type Section,
  sessionOf,
  stepCautions,
  stepNamed,
  stepSections,
  stepSentence,
  verdictText,
  type WalkAct,
  type WalkMeter,
  type WalkNow,
  type WalkProcedureName,
  walkNow,
  walkPlan,
} from '@coreward/bench';
import type { Command } from 'commander';
import { readDocument } from '../read-document.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';
import { wrapHanging } from '../text/wrap.ts';
import { walkedByLines } from '../walk-by-lines.ts';
import { readWalkLine, walkKeys } from '../walk-line.ts';

interface WalkFlags {
  readonly practice?: string;
  readonly lines?: string;
  readonly taught?: boolean;
  readonly json?: boolean;
}

/** A walk that is being led from a shell. */
interface Led {
  readonly procedure: WalkProcedureName;
  readonly meter: WalkMeter;
  /** Null: a real bench. */
  readonly bench: PracticeBench | null;
}

/** A walk is its answers, and so the lines that were typed; a shell has tools of its own to keep them. */
const keeping = (typed: string): string => `
A walk in the browser is kept in the bench book, one in a shell is not. To keep
what you type, and to go on from there another time:
  tee walk.txt | ${typed} walk FILE
  cat walk.txt - | ${typed} walk FILE
End it with Ctrl-D, for a q would be kept, too.`;

/** `coreward walk FILE [--practice SEED] [--lines DEVICE] [--taught] [--json]` */
export function addWalk(program: Command, shell: Shell): void {
  program
    .command('walk')
    .summary('climb to the peak with four screws, one instruction at a time')
    .description(
      'Says which screw to turn and how far, takes the readings as you type them, and says when the peak is reached and how ' +
        'sure that is. --practice SEED walks a simulated bench built like the launch: an empty line lets its hand do the ' +
        'step, and without a keyboard it walks to the end. --lines DEVICE listens to a device that prints a reading a line ' +
        '(a serial port set with stty, a pipe): peaks are held, and a step is answered once its reading rests at its goal.',
    )
    .argument('<file>', 'a launch document')
    .option('--practice <seed>', 'a simulated bench; the same whole number hides the same bench')
    .option('--lines <device>', 'read the light off a device that prints lines, such as /dev/ttyUSB0')
    .option('--taught', 'walk as it is taught, without a model of the bench')
    .option('--json', 'print how it went as JSON, in the unit of the meter')
    .addHelpText('after', keeping(shell.typed))
    .action(async (path: string, { practice, lines, taught = false, json = false }: WalkFlags) => {
      const document = await readDocument(path, shell);
      const launch = readLaunch(document.text, document.file);
      const seed = practice === undefined ? null : seedFrom(practice);
      const led: Led = {
        procedure: taught ? 'taught' : 'ridge',
        meter: seed === null ? 'typed' : 'power',
        bench: seed === null ? null : practiceBenchOf(launch, seed, 'steered-by-eye'),
      };
      if (lines !== undefined && led.bench !== null) throw bothAtOnce();
      tellBefore(launch, led.bench === null, shell);
      const { now, meter } =
        lines === undefined
          ? { now: await walked(launch, led, shell), meter: led.meter }
          : await walkedByLines(launch, led.procedure, lines, (...step) => asked(...step, shell), shell);
      shell.print(json ? `${JSON.stringify(asJson(now), null, 2)}\n` : sectionsText(told(now, meter), shell));
    });
}

/** The cautions of a real bench, and what must be known before the first step. */
function tellBefore(launch: Launch, isReal: boolean, shell: Shell): void {
  if (isReal) shell.talk(sectionsText(stepSections(stepCautions(launch, stepNamed('climb'))), shell));
  for (const text of beforeWalkTexts(walkPlan(launch)))
    shell.talk(`${wrapHanging(text, '', shell.width).join('\n')}\n`);
}

/** Asks until nothing is left to ask, the lines end, or somebody has had enough. */
async function walked(launch: Launch, { procedure, meter, bench }: Led, shell: Shell): Promise<WalkNow> {
  const plan = walkPlan(launch);
  const acts: WalkAct[] = [];
  const reads = { instrument: null, meter, floor: null, goesOn: false };
  const standing = (): WalkNow => walkNow(plan, sessionOf({ procedure, reads }, acts));
  const lines = shell.lines()[Symbol.asyncIterator]();
  try {
    for (let now = standing(); ; now = standing()) {
      // behind the verdict a simulated bench has nothing more to show
      if (now.ask === null || (bench !== null && now.verdict !== null)) return now;
      const { step } = now.ask;
      shell.talk(asked(now, meter, keysOf(now, bench !== null), shell));
      const next = await lines.next();
      // without a keyboard, a practice walk goes on by itself
      if (next.done === true && bench === null) return now;
      const shown = now.last ?? now.floor;
      const line =
        next.done === true
          ? ({ do: 'hand' } as const)
          : readWalkLine(next.value, step, { meter, shown, practised: bench !== null });
      switch (line.do) {
        case 'quit':
          return now;
        case 'say':
          shell.talk(`${wrapHanging(line.text, '   ', shell.width).join('\n')}\n`);
          break;
        case 'undo':
          acts.push({ do: 'undo' });
          break;
        case 'hand': {
          const answer = bench === null ? null : practise(bench, { do: 'hand', step }).answer;
          if (answer === null) break;
          acts.push({ do: 'answer', answer });
          shell.talk(`   The hand: ${moveText(step, answer, meter)}\n`);
          break;
        }
        case 'answer':
          acts.push({ do: 'answer', answer: line.answer });
      }
    }
  } finally {
    // a keyboard that is still listened to would keep the program alive
    await lines.return?.();
  }
}

/** What may be typed. */
function keysOf({ ask }: WalkNow, practised: boolean): string {
  const isPlain = ask !== null && answerOf(ask.step) === null;
  return `${practised ? 'Enter lets the hand do it; ' : isPlain ? 'Enter when it is done; ' : ''}${walkKeys}`;
}

/** The step, what to expect of it, what is believed, and what may be typed. */
function asked({ ask, moves }: WalkNow, meter: WalkMeter, keys: string, { width }: Shell): string {
  if (ask === null) return '';
  const { doThis, expect, asks } = stepSentence(ask.step, meter);
  const remaining = remainingText(ask.remaining);
  const rest = [
    ...ask.remarks.map(remarkText),
    ...(expect === null ? [] : [expect]),
    ...(moves.length === 0 ? [] : [estimateText(ask.estimate, meter)]),
    ...(remaining === null ? [] : [remaining]),
    `${asks === null ? '' : `${asks}? `}(${keys})`,
  ];
  return [
    '',
    ...wrapHanging(doThis, `${moves.length + 1}. `.padStart(4), width),
    ...rest.flatMap((text) => wrapHanging(text, '    ', width)),
    '',
  ].join('\n');
}

function told(now: WalkNow, meter: WalkMeter): readonly Section[] {
  const readings = [
    ['dark', now.floor],
    ['best', now.best],
    ['last', now.last],
  ] as const;
  return [
    {
      heading: 'What was done',
      blocks: [
        {
          kind: 'list',
          numbered: true,
          items: now.moves.map(({ step, answer }) => moveText(step, answer, meter)),
        },
        {
          kind: 'terms',
          rows: readings.flatMap(([term, reading]) =>
            reading === null ? [] : [{ term, text: readingText(reading, meter) }],
          ),
        },
      ],
    },
    {
      heading: now.verdict === null ? 'Stopped on the way' : 'How it ended',
      blocks: [
        ...(now.verdict === null
          ? []
          : [...verdictText(now.verdict, meter), ...now.verdict.remarks.map(remarkText)]),
        estimateText(now.estimate, meter),
      ].map((text) => ({ kind: 'text' as const, text })),
    },
  ];
}

/** Readings in the unit of the meter, shares as fractions. */
const asJson = ({ moves, best, last, floor, estimate, verdict }: WalkNow) => ({
  coreward: 1,
  moves: moves.map(({ step, answer, reading }) => ({ step, outcome: answer.outcome, reading })),
  floor,
  best,
  last,
  missing: estimate.missing,
  missingLow: estimate.missingLow,
  missingHigh: estimate.missingHigh,
  ended: verdict?.reason ?? null,
  claims95: verdict?.claims95 ?? null,
});

const bothAtOnce = (): Refusal =>
  new Refusal({
    where: '--lines',
    what: 'a simulated bench has a meter of its own',
    mend: 'Leave out `--lines`, or `--practice` to walk a real bench.',
  });

const largestSeed = 2 ** 32 - 1;

/** @throws {Refusal} if it is no whole number that a seed can be */
function seedFrom(written: string): number {
  const seed = Number(written);
  if (/^\d+$/u.test(written) && seed <= largestSeed) return seed;
  throw new Refusal({
    where: '--practice',
    what: `\`${written}\` is no whole number from 0 to ${largestSeed}`,
    mend: 'Write `--practice 7`.',
  });
}
