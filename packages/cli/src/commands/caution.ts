import { cautionJson, cautionSections, cautionsFor, readAnswers, readLaunch } from '@coreward/bench';
import type { Command } from 'commander';
import { readDocument } from '../read-document.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface CautionFlags {
  readonly answer: Readonly<Record<string, string>>;
  readonly json?: boolean;
}

/** `coreward caution FILE [--step STEP] [--answer ID=…]… [--coupling SHARE] [--json]` */
export function addCaution(program: Command, shell: Shell): void {
  program
    .command('caution')
    .summary('say what on this bench can hurt whom, and how far that reaches')
    .description(
      'Walks the launch in FILE from laser to far end and back: what can hurt eyes, skin, facet and sources, worst first, ' +
        'and what to do about it. A caution: your laser safety officer decides.',
    )
    .argument('<file>', 'a launch document; - reads standard input')
    .option('--answer <id=text>', 'an answer to a question that is asked below', collectAnswer, {})
    .option('--json', 'print the numbers as JSON, in SI units')
    .action(async (path: string, { answer, json = false }: CautionFlags) => {
      const { file, text } = await readDocument(path, shell);
      const launch = readLaunch(text, file);
      const cautions = cautionsFor(launch, { answers: readAnswers(launch, answer) });
      shell.print(
        json
          ? `${JSON.stringify(cautionJson(cautions), null, 2)}\n`
          : sectionsText(cautionSections(cautions), shell),
      );
    });
}

function collectAnswer(
  written: string,
  before: Readonly<Record<string, string>>,
): Readonly<Record<string, string>> {
  const equals = written.indexOf('=');
  return { ...before, [written.slice(0, equals)]: written.slice(equals + 1) };
}
