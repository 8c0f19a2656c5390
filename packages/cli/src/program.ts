import { type Argument, Command } from 'commander';
import packageFacts from '../package.json' with { type: 'json' };
import { addCaution } from './commands/caution.ts';
import { addDevices } from './commands/devices.ts';
import { addExample } from './commands/example.ts';
import { addExport } from './commands/export.ts';
import { addForecast } from './commands/forecast.ts';
import { addGauge } from './commands/gauge.ts';
import { addImport } from './commands/import.ts';
import { addInstruments } from './commands/instruments.ts';
import { addLimit } from './commands/limit.ts';
import { addMatch } from './commands/match.ts';
import { addSchema } from './commands/schema.ts';
import { addStation } from './commands/station.ts';
import { addSteer } from './commands/steer.ts';
import { addWalk } from './commands/walk.ts';
import type { Shell } from './shell.ts';

const about =
  'Gets laser light into an optical fibre, and says why it went in or did not.\n' +
  'A launch is one laser, one path, one collimator and one fibre, in a text file.';

const start = (typed: string) => `
\`${typed}\` alone shows everything in the browser. To stay in the shell, write an
invented launch and an invented drawer into this folder, then ask what to
expect of the launch:
  ${typed} example
  ${typed} forecast observing-loft.launch.yaml
  ${typed} match observing-loft.drawer.yaml

Exit codes: 0 done; 2 refused, and how to mend it is said; 70 a fault of ours.`;

function argumentTerm(argument: Argument): string {
  const name = `${argument.name()}${argument.variadic ? '...' : ''}`;
  return argument.required ? `<${name}>` : `[${name}]`;
}

/** Every command there is, each in its own file. What goes wrong is thrown. */
export function program(shell: Shell): Command {
  const all = new Command(shell.typed)
    .description(about)
    .version(`coreward ${packageFacts.version}`, '-V, --version', 'print the version')
    .helpOption('-h, --help', 'print what there is to type')
    .helpCommand('help [command]', 'print what there is to type for one command')
    .addHelpText('after', start(shell.typed))
    // every command has options: to say so of each leaves no room for what it does
    .configureHelp({
      subcommandTerm: (command) =>
        [command.name(), ...command.registeredArguments.map(argumentTerm)].join(' '),
    })
    .exitOverride()
    .configureOutput({
      writeOut: shell.print,
      writeErr: shell.talk,
      getOutHelpWidth: () => shell.width,
      getErrHelpWidth: () => shell.width,
      getOutHasColors: () => false,
      getErrHasColors: () => false,
      // said by tellTrouble, in the form of every other refusal
      outputError: () => {},
    });
  addStation(all, shell);
  addForecast(all, shell);
  addMatch(all, shell);
  addSteer(all, shell);
  addWalk(all, shell);
  addGauge(all, shell);
  addCaution(all, shell);
  addLimit(all, shell);
  addSchema(all, shell);
  addExample(all, shell);
  addExport(all, shell);
  addImport(all, shell);
  addInstruments(all, shell);
  addDevices(all, shell);
  return all;
}
