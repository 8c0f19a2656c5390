import {
  type Gauge,
  gaugeJson,
  gaugeListSections,
  gaugeNamed,
  gaugeSections,
  gauges,
  inShell,
  type RawSetting,
  Refusal,
} from '@coreward/bench';
import type { Command } from 'commander';
import { pairFor, readingsFor } from '../gauge-files.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface GaugeFlags {
  readonly json?: boolean;
  readonly list?: boolean;
  readonly pixel?: string;
  readonly scale?: string;
  readonly corners?: string;
  readonly rectangle?: string;
  readonly wavelength?: string;
  readonly set?: readonly string[];
}

/** `coreward gauge NAME FILE [--json] [--pixel …] [--wavelength …] [--set NAME=VALUE]`, `coreward gauge --list` */
export function addGauge(program: Command, shell: Shell): void {
  program
    .command('gauge')
    .summary('turn crude readings into a quantity with its uncertainty')
    .description(
      'Turns readings taken with a blade, a ruler, a camera or a meter into quantities, each with its 90 % interval, ' +
        'and says where the readings cannot tell. --list names the gauges.',
    )
    .argument('[name]', 'the gauge, such as knife-edge')
    .argument('[file]', 'a table with units in its headings, a PNG, a JPEG, or JSON; - reads standard input')
    .argument('[second]', 'the reverse beam’s picture, for a gauge that takes two')
    .option('--list', 'print every gauge, what it answers and what it needs')
    .option('--pixel <length>', 'what one pixel is wide where the spot is: "5.2 µm", or "5.2 µm ± 0.1 µm"')
    .option(
      '--scale <scale>',
      'card-offset: pixels a length on the card, "12.5 px/mm", or the length of a pixel, "0.08 mm ± 1 %"',
    )
    .option(
      '--corners <points>',
      'card-offset: corners of a rectangle on the card, in pixels from the top left, "x1,y1 x2,y2 x3,y3 x4,y4"',
    )
    .option('--rectangle <sides>', 'card-offset: the sides of that rectangle, across first, "40 mm x 30 mm"')
    .option('--wavelength <length>', 'wavelength of the light, such as "515 nm"')
    .option('--set <setting>', 'a setting, such as "level=5%"; may be given several times', collected)
    .option('--json', 'print the answers as JSON, in SI units')
    .action(
      async (
        name: string | undefined,
        path: string | undefined,
        second: string | undefined,
        flags: GaugeFlags,
      ) => {
        if (flags.list === true) {
          shell.print(
            flags.json === true
              ? `${JSON.stringify(listJson(), null, 2)}\n`
              : sectionsText(gaugeListSections(), shell),
          );
          return;
        }
        const gauge = chosen(name);
        if (path === undefined) {
          throw new Refusal({
            where: `gauge ${gauge.name}`,
            what: 'no file is named',
            mend: `Write \`${shell.typed} gauge ${gauge.name} ${filesOf(gauge)}\`.`,
          });
        }
        checkCount(gauge, second, shell);
        const { result, settings } = await toldForShell(async () => {
          const { readings, unused } =
            second === undefined
              ? await readingsFor(gauge, path, settingsOf(flags), shell)
              : await pairFor(gauge, [path, second], settingsOf(flags), shell);
          if (unused.length > 0) shell.talk(`Not used: ${unused.join(', ')}.\n`);
          return { result: gauge.measure(readings), settings: readings.settings };
        });
        const told = { ...result, remarks: result.remarks.map(inShell) };
        shell.print(
          flags.json === true
            ? `${JSON.stringify(gaugeJson(result), null, 2)}\n`
            : sectionsText(gaugeSections(gauge, told, settings), shell),
        );
      },
    );
}

/** A gauge's refusals name its settings as fields of a page; here they are typed. */
async function toldForShell<T>(work: () => Promise<T>): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    throw new Refusal(error.parts.map((part) => ({ ...part, mend: inShell(part.mend) })));
  }
}

const filesOf = ({ takes }: Gauge): string => (takes === 'two pictures' ? 'FORWARD REVERSE' : 'FILE');

/** @throws {Refusal} if a second picture is missing, or nobody asked for one */
function checkCount(gauge: Gauge, second: string | undefined, shell: Shell): void {
  if ((second !== undefined) === (gauge.takes === 'two pictures')) return;
  throw new Refusal({
    where: `gauge ${gauge.name}`,
    what:
      second === undefined
        ? 'it takes two pictures, and one is named'
        : `it takes one file, and \`${second}\` is a second`,
    mend: `Write \`${shell.typed} gauge ${gauge.name} ${filesOf(gauge)}\`.`,
  });
}

const collected = (value: string, before: readonly string[] = []): readonly string[] => [...before, value];

function listJson() {
  return gauges.map(({ name, otherNames, answers, needs, takes, columns, settings }) => ({
    name,
    otherNames,
    answers,
    needs,
    takes,
    columns: columns.map((column) => ({
      name: column.name,
      dimension: column.dimension,
      needed: column.needed,
      what: column.what,
    })),
    settings: settings.map((setting) => ({
      name: setting.name,
      dimension: setting.dimension,
      needed: setting.needed,
      what: setting.what,
    })),
  }));
}

function chosen(name: string | undefined): Gauge {
  const gauge = name === undefined ? null : gaugeNamed(name);
  if (gauge !== null) return gauge;
  const names = gauges.map((one) => `\`${one.name}\``).join(', ');
  throw new Refusal({
    where: 'gauge',
    what: name === undefined ? 'no gauge is named' : `there is no gauge \`${name}\``,
    mend: `Write one of ${names}.`,
  });
}

/** Settings typed on the command line; they come before those in the file. */
function settingsOf({
  pixel,
  scale,
  corners,
  rectangle,
  wavelength,
  set = [],
}: GaugeFlags): readonly RawSetting[] {
  return [
    ...(pixel === undefined ? [] : [{ name: 'pixel', text: inMetres(pixel), where: '--pixel' }]),
    ...(wavelength === undefined
      ? []
      : [{ name: 'wavelength', text: inMetres(wavelength), where: '--wavelength' }]),
    ...Object.entries({ scale, corners, rectangle }).flatMap(([name, text]) =>
      text === undefined ? [] : [{ name, text, where: `--${name}` }],
    ),
    ...set.map((text) => {
      const [name = '', ...value] = text.split('=');
      if (value.length === 0) {
        throw new Refusal({
          where: '--set',
          what: `\`${text}\` names no value`,
          mend: 'Write it as "name=value", such as "level=5%".',
        });
      }
      return { name, text: value.join('='), where: '--set' };
    }),
  ];
}

/** A bare number with an exponent, `5.2e-6`, is SI as in JSON. */
const inMetres = (text: string): string => (/^\s*\d*\.?\d+e[+-]?\d+\s*$/iu.test(text) ? `${text} m` : text);
