import { Refusal, type RefusalParts } from '@coreward/bench';
import { OutOfRange } from '@coreward/optics';
import { CommanderError } from 'commander';
import { exitCodes } from './exit-codes.ts';
import type { Shell } from './shell.ts';
import { refusalText } from './text/refusal-text.ts';

/**
 * Says what went wrong, on standard error.
 *
 * @param command as it was typed, for what was wrong with the command line itself
 * @returns the exit code
 */
export function tellTrouble(error: unknown, command: string, shell: Shell): number {
  if (error instanceof Refusal) return refuse(error.parts, shell);
  if (error instanceof OutOfRange) return refuse([error], shell);
  if (error instanceof CommanderError) {
    if (error.exitCode === 0) return exitCodes.done; // help or version was asked for, and printed
    if (error.code === 'commander.help') return exitCodes.refused; // help was printed for want of a command
    return refuse([commandLineRefusal(error, command)], shell);
  }
  return confess(error, shell);
}

function refuse(parts: readonly RefusalParts[], shell: Shell): number {
  shell.talk(refusalText(parts, shell.width));
  return exitCodes.refused;
}

/** A message such as `error: unknown option '--jsn'\n(Did you mean --json?)` as what, where and mend. */
function commandLineRefusal({ code, message }: CommanderError, command: string): RefusalParts {
  const [said = '', hint = ''] = message.replace(/^error: /u, '').split('\n');
  const choices = /(?:value|argument) '(.*)' is invalid.* Allowed choices are (.*)\.$/u.exec(said);
  if (choices !== null) {
    const [, value = '', words = ''] = choices;
    return { where: command, what: `\`${value}\` is not known here`, mend: `Write ${oneOf(words)}.` };
  }
  const what = said.replace(/'([^']*)'/gu, '`$1`').replace(/\.$/u, '');
  const meant = /^\(Did you mean (?:one of )?(.+)\?\)$/u.exec(hint)?.[1];
  if (meant !== undefined) return { where: command, what, mend: `Write ${oneOf(meant)}.` };
  const look = `Type \`${command} --help\` to see what there is.`;
  return code === 'commander.excessArguments'
    ? { where: command, what, mend: 'Put a name that has spaces in it between quotes.' }
    : { where: command, what, mend: look };
}

/** `launch, drawer` as "`launch` or `drawer`". */
const oneOf = (words: string): string =>
  words
    .split(', ')
    .map((word) => `\`${word}\``)
    .join(' or ');

function confess(error: unknown, shell: Shell): number {
  const message = error instanceof Error ? error.message : String(error);
  shell.talk(
    `This is a fault in Coreward, not in what you did: ${message}\n` +
      'Please report it with the command as you typed it, the file it was given, and what the\n' +
      'same command says when COREWARD_DEBUG=1 is set.\n',
  );
  if (shell.debug && error instanceof Error) shell.talk(`${error.stack ?? 'no stack'}\n`);
  return exitCodes.ourFault;
}
