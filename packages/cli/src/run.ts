import type { Command } from 'commander';
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
  const meant = asMeant(words, commands);
  try {
    await commands.parseAsync(meant, { from: 'user' });
    return exitCodes.done;
  } catch (error) {
    const command = commands.commands.find((one) => one.name() === meant[0]);
    return tellTrouble(
      error,
      command === undefined ? shell.typed : `${shell.typed} ${command.name()}`,
      shell,
    );
  }
}

/** `coreward` alone, or with nothing but what a station takes, means the station. */
function asMeant(words: readonly string[], commands: Command): readonly string[] {
  const [first] = words;
  const station = commands.commands.find((one) => one.name() === 'station');
  const option = first?.split('=', 1)[0];
  const isStation = first === undefined || station?.options.some(({ long }) => long === option) === true;
  return isStation ? ['station', ...words] : words;
}
