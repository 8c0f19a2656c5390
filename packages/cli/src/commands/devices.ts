import { Refusal } from '@coreward/bench';
import type { BenchBook } from '@coreward/station';
import type { Command } from 'commander';
import { lookingInto } from '../data-folder.ts';
import type { Shell } from '../shell.ts';

interface DataFlag {
  readonly data?: string;
}

/** `coreward devices [--json]` and `coreward devices revoke ID`, each with `--data DIR` */
export function addDevices(program: Command, shell: Shell): void {
  const devices = program
    .command('devices')
    .summary('list the machines that were paired, or revoke one')
    .description('Lists the machines that may reach the station from elsewhere.');
  devices
    .command('list', { isDefault: true })
    .summary('list them')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .option('--json', 'print them as JSON')
    .action(({ data, json }: DataFlag & { readonly json?: boolean }) =>
      lookingInto(data, shell, (book) => {
        const all = book.devices.all();
        if (json === true) shell.print(`${JSON.stringify({ coreward: 1, devices: all }, null, 2)}\n`);
        else if (all.length === 0) shell.print('No other machine is paired.\n');
        for (const { id, name, paired, seen } of json === true ? [] : all) {
          shell.print(
            `${id.slice(0, 8)}  ${name}\n          paired ${dayOf(paired)}, last here ${dayOf(seen)}\n`,
          );
        }
      }),
    );
  devices
    .command('revoke')
    .summary('let one in no longer')
    .description('Lets a machine in no longer; a page open there closes within seconds.')
    .argument('<id>', 'its first letters, as they stand in the list')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .action((id: string, { data }: DataFlag) =>
      lookingInto(data, shell, (book) => {
        const { id: whole, name } = theOne(id, book, shell);
        book.revokeDevice(whole);
        shell.print(`${name} is let in no longer.\n`);
      }),
    );
}

/** A day is enough for people; the hour is in the JSON. */
const dayOf = (time: string): string => time.slice(0, 10);

function theOne(written: string, book: BenchBook, shell: Shell) {
  const meant = book.devices.all().filter(({ id }) => id.startsWith(written.toLowerCase()));
  const [one] = meant;
  if (one !== undefined && meant.length === 1) return one;
  throw new Refusal({
    where: `device ${written}`,
    what: one === undefined ? 'there is no such device' : `${meant.length} devices begin like this`,
    mend: `Type more of its letters, as \`${shell.typed} devices --json\` prints them.`,
  });
}
