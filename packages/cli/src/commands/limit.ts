import { answerLimit, limitJson, limitSections, readLimitQuestion } from '@coreward/bench';
import { type Tissue, tissues } from '@coreward/optics';
import { type Command, Option } from 'commander';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface LimitOptions {
  readonly wavelength?: string;
  readonly duration?: string;
  readonly angle?: string;
  readonly tissue: Tissue;
  readonly json?: boolean;
}

/** `coreward limit --wavelength … --duration … [--angle …] [--tissue eye|skin] [--json]` */
export function addLimit(program: Command, shell: Shell): void {
  program
    .command('limit')
    .summary('say what an eye or a skin may be exposed to')
    .description(
      'Says the exposure limit for one wavelength and one time, in two sets of limits, and which of them governs. ' +
        'A caution: your laser safety officer decides.',
    )
    .option('--wavelength <length>', 'vacuum wavelength, such as "635 nm"')
    .option('--duration <time>', 'how long the exposure, or one pulse, lasts: "10 s"')
    .option(
      '--angle <angle>',
      'full angle the source is seen under; left out: the smallest, with the lowest limit',
    )
    .addOption(new Option('--tissue <tissue>', 'what is hit').choices(tissues).default('eye'))
    .option('--json', 'print the numbers as JSON, in SI units')
    .action(({ wavelength, duration, angle, tissue, json = false }: LimitOptions) => {
      const answer = answerLimit(
        readLimitQuestion({
          wavelength: { where: '--wavelength', text: wavelength },
          duration: { where: '--duration', text: duration },
          angle: { where: '--angle', text: angle },
          tissue,
        }),
      );
      shell.print(
        json ? `${JSON.stringify(limitJson(answer), null, 2)}\n` : sectionsText(limitSections(answer), shell),
      );
    });
}
