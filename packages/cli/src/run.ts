import { exitCodes } from './exit-codes.ts';
import { program } from './program.ts';
import type { Shell } from './shell.ts';
import { tellTrouble } from './trouble.ts';

/**
 * Runs one command line.
 *
 * @param words what stands behind `coreward`
 * @returns the exit code; nothing is thrown
 */
export async function run(words: readonly string[], shell: Shell): Promise<number> {
  const commands = program(shell);
  try {
    if (words.length === 0) commands.outputHelp();
    else await commands.parseAsync(words, { from: 'user' });
    return exitCodes.done;
  } catch (error) {
    const command = commands.commands.find((one) => one.name() === words[0]);
    return tellTrouble(
      error,
      command === undefined ? shell.typed : `${shell.typed} ${command.name()}`,
      shell,
    );
  }
}
