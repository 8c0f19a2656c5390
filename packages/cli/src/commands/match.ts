import {
  type Match,
  type MatchProgress,
  type MatchPurpose,
  matching,
  matchJson,
  matchPurposes,
  matchSections,
  readDrawer,
} from '@coreward/bench';
import { type Command, Option } from 'commander';
import { readDocuments } from '../read-document.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface MatchFlags {
  readonly for: MatchPurpose;
  readonly laser?: string;
  readonly all?: boolean;
  readonly json?: boolean;
}

/** Rows that are printed for one laser unless all are asked for: of one laser a page, of several a few each. */
const usualRows = (lasers: number): number => (lasers === 1 ? 12 : 5);

/** Milliseconds of silence before progress is told, and between two tellings. */
const patience = 200;

/** `coreward match DRAWER… [--for total|lp01] [--laser NAME] [--all] [--json]` */
export function addMatch(program: Command, shell: Shell): void {
  program
    .command('match')
    .summary('say which parts of a drawer go best together')
    .description(
      'Ranks the lenses and fibres of a drawer for each of its lasers, and says why each is not better.',
    )
    .argument('<drawer...>', 'a drawer document, or several that together are one; - reads standard input')
    .addOption(
      new Option(
        '--for <purpose>',
        'total: all guided light; lp01: power in LP01; other modes may come with it',
      )
        .choices(matchPurposes)
        .default('total'),
    )
    .option('--laser <name>', 'only for the laser of this name')
    .option('--all', 'print every combination')
    .option('--json', 'print the numbers as JSON, in SI units')
    .action(async (paths: readonly string[], flags: MatchFlags) => {
      const drawer = readDrawer(await readDocuments(paths, 'drawer', shell));
      const found = toldOf(matching(drawer, { purpose: flags.for, laser: flags.laser ?? null }), shell);
      const lasers = new Set(found.pairs.map(({ laser }) => laser)).size;
      const rows = flags.all === true ? Number.POSITIVE_INFINITY : usualRows(lasers);
      shell.print(
        flags.json === true
          ? `${JSON.stringify(matchJson(found), null, 2)}\n`
          : sectionsText(matchSections(found, rows), shell),
      );
    });
}

/** Runs a match to its end and tells how far it is, once it takes longer than one waits. */
function toldOf(steps: Generator<MatchProgress, Match>, shell: Shell): Match {
  let told = shell.clock();
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
    const now = shell.clock();
    if (now - told < patience) continue;
    told = now;
    const { done, total, best } = step.value;
    const sofar =
      best === null
        ? ''
        : `, best so far ${(100 * best.score.value).toFixed(0)} %: ${best.laser} + ${best.collimator} + ${best.fibre}`;
    shell.talk(`${done} of ${total}${sofar}\n`);
  }
}
