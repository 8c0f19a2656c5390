import { forecast, forecastJson, forecastSections, located, readLaunch } from '@coreward/bench';
import type { Command } from 'commander';
import { readDocument } from '../read-document.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

/** `coreward forecast FILE [--json]` */
export function addForecast(program: Command, shell: Shell): void {
  program
    .command('forecast')
    .summary('say what to expect of a launch')
    .description(
      'Says what to expect of the launch in FILE: how much light, why not more, and what to measure next.',
    )
    .argument('<file>', 'a launch document; - reads standard input')
    .option('--json', 'print the numbers as JSON, in SI units')
    .action(async (path: string, { json = false }: { readonly json?: boolean }) => {
      const document = await readDocument(path, shell);
      const launch = readLaunch(document.text, document.file);
      const begun = shell.clock();
      const expected = located(document, () => forecast(launch));
      if (shell.debug) shell.talk(`forecast computed in ${(shell.clock() - begun).toFixed(0)} ms\n`);
      shell.print(
        json
          ? `${JSON.stringify(forecastJson(expected), null, 2)}\n`
          : sectionsText(forecastSections(expected), shell),
      );
    });
}
