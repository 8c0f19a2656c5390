import {
  noiseWords,
  printable,
  type Reading,
  Refusal,
  rateWords,
  readingWords,
  stateWords,
} from '@coreward/bench';
import type { BenchBook, SeenInstrument } from '@coreward/station';
import type { Command } from 'commander';
import { lookingInto } from '../data-folder.ts';
import type { Shell } from '../shell.ts';

interface Flags {
  readonly data?: string;
  readonly json?: boolean;
}

/** `coreward instruments [--json]` and `coreward instruments watch NAME [--json]`, each with `--data DIR` */
export function addInstruments(program: Command, shell: Shell): void {
  const instruments = program
    .command('instruments')
    .summary('list the instruments, or print the readings of one as they come')
    .description(
      'Lists what reads the light: as the running station tells it, or without one as the bench book does.',
    );
  instruments
    .command('list', { isDefault: true })
    .summary('list them')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .option('--json', 'print them as JSON')
    .action((flags: Flags) => lookingInto(flags.data, shell, (book) => list(book, flags, shell)));
  instruments
    .command('watch')
    .summary('print readings as they come')
    .description(
      'Prints each reading of one instrument as the running station hears it, until Ctrl-C: the time, and the reading with ' +
        'its unit; `gap` where nothing comes from then on.',
    )
    .argument('<name>', 'of the instrument, or the first letters of its id')
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .option('--json', 'print each as a line of JSON, SI')
    .action((name: string, flags: Flags) =>
      lookingInto(flags.data, shell, (book) => watch(book, name, flags, shell)),
    );
}

async function list(book: BenchBook, { json }: Flags, shell: Shell): Promise<void> {
  const { seenInstruments } = await import('@coreward/station');
  const { station, instruments } = await seenInstruments(book);
  if (json === true) {
    const told = { coreward: 1, station: station?.address ?? null, instruments };
    shell.print(`${JSON.stringify(told, null, 2)}\n`);
    return;
  }
  if (station === null) shell.talk('No station has this bench book open: nothing is read now.\n');
  if (instruments.length === 0) shell.print('There is no instrument yet; add one in the browser.\n');
  for (const one of instruments) shell.print(`${linesOf(one).join('\n')}\n`);
}

function linesOf(one: SeenInstrument): readonly string[] {
  const { id, name, kind, unit, state, on, rate_Hz, noise, floor, lastReading, trouble } = one;
  const value = lastReading?.value ?? null;
  const stands = state === null ? (on ? 'on, once the station runs' : stateWords.off) : stateWords[state];
  const facts = [
    stands,
    value === null ? 'no reading' : said(value, lastReading?.saturated === true, unit),
    ...(rate_Hz === null || state !== 'reading' ? [] : [rateWords(rate_Hz)]),
    ...(noise === null
      ? []
      : [`noise ${noiseWords(noise, unit, value === null ? null : value - (floor ?? 0))}`]),
  ];
  return [
    `${id.slice(0, 8)}  ${printable(name)}, ${kind}`,
    `          ${facts.join(', ')}`,
    ...(trouble === null
      ? []
      : [`          ${printable(`${trouble.where}: ${trouble.what}. ${trouble.mend}`)}`]),
  ];
}

const said = (value: number, saturated: boolean, unit: SeenInstrument['unit']): string =>
  `${readingWords(value, unit)}${saturated ? ' at its upper end' : ''}`;

async function watch(book: BenchBook, written: string, { json }: Flags, shell: Shell): Promise<void> {
  const { hearReadings, seenInstruments } = await import('@coreward/station');
  const { station, instruments } = await seenInstruments(book);
  const one = theOne(written, instruments, shell);
  if (station === null) {
    throw new Refusal({
      where: book.file,
      what: 'no station has this bench book open, so that nothing is read',
      mend: `Start \`${shell.typed}\` in another terminal.`,
    });
  }
  if (!one.on)
    shell.talk(`${printable(one.name)} is off: switch it on in the browser, at ${station.address}\n`);
  const listening = hearReadings(station, one.id, (reading) =>
    shell.print(`${line(reading, one, json === true)}\n`),
  );
  const stopped = await Promise.race([
    shell.machine.untilStopped().then(() => false),
    listening.ended.then(() => true),
  ]);
  listening.leave();
  if (!stopped) return;
  throw new Refusal({
    where: station.address,
    what: 'the station has stopped',
    mend: `Start \`${shell.typed}\` again, then this.`,
  });
}

function line({ t, value, saturated }: Reading, { name, unit }: SeenInstrument, json: boolean): string {
  const time = new Date(t).toISOString();
  if (json) return JSON.stringify({ instrument: name, time, value, unit, saturated });
  return `${time}  ${value === null ? 'gap' : said(value, saturated, unit)}`;
}

function theOne(written: string, all: readonly SeenInstrument[], shell: Shell): SeenInstrument {
  const named = all.filter(({ name }) => name === written);
  const meant = named.length > 0 ? named : all.filter(({ id }) => id.startsWith(written.toLowerCase()));
  const [one] = meant;
  if (one !== undefined && meant.length === 1) return one;
  throw new Refusal({
    where: `instrument ${written}`,
    what: one === undefined ? 'there is no such instrument' : `${meant.length} instruments go by this`,
    mend: `Type its name, or more letters of its id, as \`${shell.typed} instruments\` prints them.`,
  });
}
