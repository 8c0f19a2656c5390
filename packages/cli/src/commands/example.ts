import { observingLoftDrawer, observingLoftLaunch } from '@coreward/bench';
import type { Command } from 'commander';
import type { Shell } from '../shell.ts';
import { inFolder, mustBeFree, writeNew } from '../write-new.ts';

const launchFile = 'observing-loft.launch.yaml';
const drawerFile = 'observing-loft.drawer.yaml';

/** `coreward example [FOLDER]` */
export function addExample(program: Command, shell: Shell): void {
  program
    .command('example')
    .summary('write an invented launch and drawer to try')
    .description(
      `Writes ${launchFile} and ${drawerFile}, both invented, into a folder. Nothing is overwritten.`,
    )
    .argument('[folder]', 'where to write them; made if it does not exist', '.')
    .action(async (folder: string) => {
      const launch = inFolder(folder, launchFile);
      const drawer = inFolder(folder, drawerFile);
      const elsewhere = `${shell.typed} example FOLDER`;
      await mustBeFree([launch, drawer], elsewhere, shell);
      await writeNew(launch, observingLoftLaunch, elsewhere, shell);
      await writeNew(drawer, observingLoftDrawer, elsewhere, shell);
      shell.print(
        `Written: ${launch}\n         ${drawer}\n\n` +
          `Next, see what to expect of it:\n  ${shell.typed} forecast ${quotedForShell(launch)}\n\n` +
          'Then change a line, a focal length perhaps, and look again.\n',
      );
    });
}

/** A path that can be typed as it is, or between quotes. */
function quotedForShell(path: string): string {
  return /^[\w./~-]+$/u.test(path) ? path : `'${path.replaceAll("'", `'\\''`)}'`;
}
