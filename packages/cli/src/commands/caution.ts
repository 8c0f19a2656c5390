import {
  cautionJson,
  cautionSections,
  cautionsFor,
  Refusal,
  readAnswers,
  readLaunch,
  readQuantity,
  stepCautions,
  stepJson,
  stepNamed,
  stepSections,
} from '@coreward/bench';
import type { Command } from 'commander';
import { readDocument } from '../read-document.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface CautionFlags {
  readonly step?: string;
  readonly answer?: readonly string[];
  readonly coupling?: string;
  readonly json?: boolean;
}

/** `coreward caution FILE [--step STEP] [--answer ID=TEXT]… [--coupling SHARE] [--json]` */
export function addCaution(program: Command, shell: Shell): void {
  program
    .command('caution')
    .summary('say what on this bench can hurt whom, and how far that reaches')
    .description(
      'Walks the launch in FILE from laser to far end and back: what can hurt eyes, skin, facet and sources, worst first, ' +
        'and what to do about it. A caution: your laser safety officer decides.',
    )
    .argument('<file>', 'a launch document; - reads standard input')
    .option('--step <step>', 'the cautions of one step of the work: 0 to 10, or its name')
    .option('--answer <id=text>', 'answer a question; may be repeated', collected)
    .option('--coupling <share>', 'how much of the light is at the far end so far, such as "40 %"')
    .option('--json', 'print the numbers as JSON, in SI units')
    .action(async (path: string, flags: CautionFlags) => {
      const { file, text } = await readDocument(path, shell);
      const launch = readLaunch(text, file);
      const options = {
        answers: readAnswers(launch, answersFrom(flags.answer ?? [])),
        couplingReached: flags.coupling === undefined ? null : shareFrom(flags.coupling),
      };
      const json = (entries: unknown) => `${JSON.stringify(entries, null, 2)}\n`;
      if (flags.step === undefined) {
        const cautions = cautionsFor(launch, options);
        shell.print(
          flags.json === true ? json(cautionJson(cautions)) : sectionsText(cautionSections(cautions), shell),
        );
        return;
      }
      const step = stepCautions(launch, stepNamed(flags.step), options);
      shell.print(flags.json === true ? json(stepJson(step)) : sectionsText(stepSections(step), shell));
    });
}

const collected = (written: string, before: readonly string[] = []): readonly string[] => [
  ...before,
  written,
];

/** @throws {Refusal} for what has no `=` */
function answersFrom(written: readonly string[]): Readonly<Record<string, string>> {
  return Object.fromEntries(
    written.map((one) => {
      const equals = one.indexOf('=');
      if (equals > 0) return [one.slice(0, equals), one.slice(equals + 1)];
      throw new Refusal({
        where: '--answer',
        what: 'a question and its answer are wanted, with `=` between them',
        mend: 'Write `--answer "highest-power=30 mW"`.',
      });
    }),
  );
}

/** @throws {Refusal} if it is no share */
function shareFrom(written: string): number {
  const read = readQuantity(written, 'fraction', { example: '40 %' });
  if (!read.ok) throw new Refusal({ where: '--coupling', what: read.what, mend: read.mend });
  return read.value;
}
