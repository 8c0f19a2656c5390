import { observingLoftDrawer, observingLoftLaunch, Refusal, type RefusalParts } from '@coreward/bench';
import type { Command } from 'commander';
import type { Shell } from '../shell.ts';

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
      await mustBeFree([launch, drawer], shell);
      await create(launch, observingLoftLaunch, shell);
      await create(drawer, observingLoftDrawer, shell);
      shell.print(
        `Written: ${launch}\n         ${drawer}\n\n` +
          `Next, see what to expect of it:\n  ${shell.typed} forecast ${quotedForShell(launch)}\n\n` +
          'Then change a line, a focal length perhaps, and look again.\n',
      );
    });
}

function inFolder(folder: string, file: string): string {
  if (folder === '.') return file;
  return folder.endsWith('/') ? `${folder}${file}` : `${folder}/${file}`;
}

async function mustBeFree(paths: readonly string[], shell: Shell): Promise<void> {
  const taken: RefusalParts[] = [];
  for (const path of paths) if (await shell.isTaken(path)) taken.push(occupied(path, shell));
  if (taken.length > 0) throw new Refusal(taken);
}

const occupied = (where: string, shell: Shell): RefusalParts => ({
  where,
  what: 'there is such a file already, and it is not overwritten',
  mend: `Move it away, or name another folder: \`${shell.typed} example FOLDER\`.`,
});

async function create(path: string, text: string, shell: Shell): Promise<void> {
  const outcome = await shell.create(path, text);
  switch (outcome.kind) {
    case 'created':
      return;
    case 'exists':
      throw new Refusal(occupied(path, shell));
    case 'forbidden':
      throw new Refusal({
        where: path,
        what: 'you may not write there',
        mend: `Name a folder of your own: \`${shell.typed} example FOLDER\`.`,
      });
    case 'no folder':
      throw new Refusal({
        where: path,
        what: 'a file stands where the folder should be',
        mend: `Name another folder: \`${shell.typed} example FOLDER\`.`,
      });
    case 'failed':
      throw new Refusal({
        where: path,
        what: `it could not be written (${outcome.reason})`,
        mend: `Name another folder: \`${shell.typed} example FOLDER\`.`,
      });
  }
}

/** A path that can be typed as it is, or between quotes. */
function quotedForShell(path: string): string {
  return /^[\w./~-]+$/u.test(path) ? path : `'${path.replaceAll("'", `'\\''`)}'`;
}
