import {
  beforeWalkTexts,
  estimateText,
  type Launch,
  moveText,
  practiceBenchOf,
  Refusal,
  readingText,
  readLaunch,
  remainingText,
  remarkText,
  type Section,
  stepCautions,
  stepNamed,
  stepSections,
  stepSentence,
  verdictText,
  type WalkMeter,
  type WalkNow,
  walkPlan,
} from '@coreward/bench';
import type { Command } from 'commander';
import { keptFile, notKept } from '../kept-file.ts';
import { type LedWalk, ledWalk } from '../led-walk.ts';
import { readDocument } from '../read-document.ts';
import { seedFrom } from '../seed-option.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';
import { wrapHanging } from '../text/wrap.ts';
import { walkedByLines } from '../walk-by-lines.ts';
import { walkedByTyping } from '../walk-by-typing.ts';

interface WalkFlags {
  readonly practice?: string;
  readonly lines?: string;
  readonly keep?: string;
  readonly taught?: boolean;
  readonly json?: boolean;
}

const keeping = (typed: string): string => `
A walk in the browser is kept in the bench book. One in a shell is kept by
--keep, a line of its FILE for everything done, on the disk before the next step
is asked; the same command goes on from there, after q, Ctrl-C or a lost
terminal, typed or by --lines. It is of one launch as it stands, and no part of
the bench book:
  ${typed} walk loft.launch.yaml --keep loft.walk`;

/** `coreward walk FILE [--practice SEED] [--lines DEVICE] [--keep FILE] [--taught] [--json]` */
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
    .option('--keep <file>', 'keep what is done in a file, and go on with what it keeps')
    .option('--taught', 'walk as it is taught, without a model of the bench')
    .option('--json', 'print how it went as JSON, in the unit of the meter')
    .addHelpText('after', keeping(shell.typed))
    .action(async (path: string, { practice, lines, keep, taught = false, json = false }: WalkFlags) => {
      const document = await readDocument(path, shell);
      const launch = readLaunch(document.text, document.file);
      const seed = practice === undefined ? null : seedFrom(practice);
      if (lines !== undefined && seed !== null) throw bothAtOnce();
      const procedure = taught ? 'taught' : 'ridge';
      const bench = seed === null ? null : practiceBenchOf(launch, seed, 'steered-by-eye');
      const begun = JSON.stringify({ coreward: 1, keeps: 'walk', procedure, seed, launch: document.text });
      const kept = keep === undefined ? notKept : await keptFile(keep, begun, shell);
      const led = ledWalk({ launch, procedure, bench }, kept, keep ?? '');
      tellBefore(launch, bench === null, shell);
      if (kept.before.length > 0) shell.talk(`\nGoing on from ${keep}.\n`);
      const say = (...step: readonly [WalkNow, WalkMeter, string]) => asked(...step, shell);
      const now =
        lines === undefined
          ? await walkedByTyping(await typing(led), bench, say, shell)
          : await walkedByLines(led, lines, say, shell);
      const { meter } = led.session();
      shell.print(json ? `${JSON.stringify(asJson(now), null, 2)}\n` : sectionsText(told(now, meter), shell));
    });
}

/** Typed for whatever read the light before: that changes nothing. */
async function typing(led: LedWalk): Promise<LedWalk> {
  await led.readBy(null, led.session().meter);
  return led;
}

/** The cautions of a real bench, and what must be known before the first step. */
function tellBefore(launch: Launch, isReal: boolean, shell: Shell): void {
  if (isReal) shell.talk(sectionsText(stepSections(stepCautions(launch, stepNamed('climb'))), shell));
  for (const text of beforeWalkTexts(walkPlan(launch)))
    shell.talk(`${wrapHanging(text, '', shell.width).join('\n')}\n`);
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
