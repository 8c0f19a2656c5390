import { Refusal } from '@coreward/bench';
import type { LanEntrance } from '@coreward/station';
import type { Command } from 'commander';
import packageFacts from '../../package.json' with { type: 'json' };
import { dataFolderOf } from '../data-folder.ts';
import type { Shell } from '../shell.ts';

interface StationFlags {
  readonly port?: number;
  readonly data?: string;
  readonly open: boolean;
  readonly lan?: boolean;
  readonly web?: string;
}

/** `coreward [station] [--port N] [--data DIR] [--no-open] [--lan]` */
export function addStation(program: Command, shell: Shell): void {
  program
    .command('station')
    .summary('show everything in the browser; what `coreward` alone does')
    .description(
      'Keeps your bench book and shows it in the browser of this computer, and of no other unless you ask for it.',
    )
    .option('--port <number>', 'listen there; otherwise at 5208 or the next that is free', portNumber)
    .option('--data <folder>', 'where the bench book lies; otherwise in your own data folder')
    .option('--no-open', 'do not open the browser')
    .option('--lan', 'let other machines be paired, such as the phone beside the mount')
    .option('--web <folder>', 'serve other screens than those that were built with this program')
    .action((flags: StationFlags) => keepStation(flags, shell));
}

function portNumber(written: string): number {
  const port = Number(written);
  if (/^\d{1,5}$/u.test(written) && port >= 1 && port <= 65_534) return port;
  throw new Refusal({
    where: '--port',
    what: `\`${written}\` is no port`,
    mend: 'Write a number from 1 to 65534, such as `--port 6208`.',
  });
}

async function keepStation(flags: StationFlags, shell: Shell): Promise<void> {
  const { machine } = shell;
  // loaded only here: the other commands need no database and start without waiting for one
  const { startStation } = await import('@coreward/station');
  const folder = await dataFolderOf(flags.data, machine);
  const station = await startStation({
    world: machine,
    folder,
    screens: flags.web ?? machine.screens,
    port: flags.port ?? null,
    lan: flags.lan === true,
    version: packageFacts.version,
    fault: (error) => shell.talk(faultText(error, shell.debug)),
  });
  shell.print(`Coreward is at ${station.address}\n`);
  shell.talk(`The bench book lies in ${folder}. Ctrl-C stops the station.\n`);
  const stopListening = station.lan === null ? () => {} : offerPairing(station.lan, shell);
  if (flags.open) await machine.openPage(station.address);
  await machine.untilStopped();
  stopListening();
  const unkept = await station.stop();
  shell.talk(
    unkept === 0
      ? 'The station has stopped; everything is kept.\n'
      : `The station has stopped. The disk took no more: ${unkept} readings of devices are not kept.\n`,
  );
}

/** Prints the way in for other machines, and a fresh one whenever Enter is typed. Returns how to stop that. */
function offerPairing(lan: LanEntrance, shell: Shell): () => void {
  const offer = () => {
    const { code, addresses, picture } = lan.openPairing();
    if (addresses.length === 0) {
      shell.talk(
        'This computer is in no network. Connect it to that of the other machine, then type Enter.\n',
      );
      return;
    }
    shell.talk(
      `\n${picture}\n\nOn the other machine read this, or open one of\n` +
        `${addresses.map((address) => `  ${address.replace(/#.*$/u, '')}\n`).join('')}` +
        `and type the code  ${code}  there. It works once, for five minutes; Enter makes a new one.\n` +
        'Its browser will warn that nobody vouches for the certificate. It is the right one if its\n' +
        `SHA-256 fingerprint is\n  ${lan.fingerprint.slice(0, 47)}\n  ${lan.fingerprint.slice(48)}\n`,
    );
  };
  offer();
  return shell.machine.onEnter(offer);
}

function faultText(error: unknown, debug: boolean): string {
  const told = error instanceof Error ? ((debug ? error.stack : null) ?? error.message) : String(error);
  return `This is a fault in Coreward, not in what you did: ${told}\n`;
}
