import { dirname, isAbsolute, join } from 'node:path';
import {
  assign,
  type Gauge,
  gaugeJson,
  gaugeListSections,
  gaugeNamed,
  gaugeSections,
  gauges,
  type Picture,
  pictureFormat,
  type RawReadings,
  type RawSetting,
  type Readings,
  Refusal,
  readReadings,
  textOfBytes,
} from '@coreward/bench';
import type { Command } from 'commander';
import { decodePicture } from '../decode-picture.ts';
import { type FileBytes, readBytes } from '../read-bytes.ts';
import type { Shell } from '../shell.ts';
import { sectionsText } from '../text/sections-text.ts';

interface GaugeFlags {
  readonly json?: boolean;
  readonly list?: boolean;
  readonly pixel?: string;
  readonly wavelength?: string;
  readonly set: readonly string[];
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
    .option('--list', 'print every gauge, what it answers and what it needs')
    .option(
      '--pixel <length>',
      'what one pixel is wide where the spot is, such as "5.2 µm" or "5.2 µm ± 0.1 µm"',
    )
    .option('--wavelength <length>', 'wavelength of the light, such as "515 nm"')
    .option('--set <setting>', 'a setting, such as "level=5%"; may be given several times', collected, [])
    .option('--json', 'print the answers as JSON, in SI units')
    .action(async (name: string | undefined, path: string | undefined, flags: GaugeFlags) => {
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
          mend: `Write \`${shell.typed} gauge ${gauge.name} FILE\`.`,
        });
      }
      const { readings, unused } = await readingsFor(gauge, path, settingsOf(flags), shell);
      if (unused.length > 0) shell.talk(`Not used: ${unused.join(', ')}.\n`);
      const result = gauge.measure(readings);
      shell.print(
        flags.json === true
          ? `${JSON.stringify(gaugeJson(result), null, 2)}\n`
          : sectionsText(gaugeSections(gauge, result, readings.settings), shell),
      );
    });
}

const collected = (value: string, before: readonly string[]): readonly string[] => [...before, value];

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
function settingsOf({ pixel, wavelength, set }: GaugeFlags): readonly RawSetting[] {
  return [
    ...(pixel === undefined ? [] : [{ name: 'pixel', text: inMetres(pixel), where: '--pixel' }]),
    ...(wavelength === undefined
      ? []
      : [{ name: 'wavelength', text: inMetres(wavelength), where: '--wavelength' }]),
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

async function readingsFor(
  gauge: Gauge,
  path: string,
  typed: readonly RawSetting[],
  shell: Shell,
): Promise<{ readonly readings: Readings; readonly unused: readonly string[] }> {
  const given = await readBytes(path, shell);
  const { raw, picture } =
    pictureFormat(given.bytes) !== null
      ? {
          raw: { where: given.file, columns: [], settings: [] },
          picture: decodePicture(given.bytes, given.file),
        }
      : await fromText(gauge, given, path, shell);
  if ((picture === null) === (gauge.takes === 'picture')) throw wrongKind(gauge, given.file);
  const { readings, unused } = assign(gauge, { ...raw, settings: [...typed, ...raw.settings] });
  return { readings: { ...readings, picture }, unused };
}

/** A table or JSON; JSON may name a picture beside it. */
async function fromText(
  gauge: Gauge,
  { file, bytes }: FileBytes,
  path: string,
  shell: Shell,
): Promise<{ readonly raw: RawReadings; readonly picture: Picture | null }> {
  const text = textOfBytes(bytes, file, (all, encoding) =>
    new TextDecoder(encoding, { fatal: true }).decode(all),
  );
  const inputs = readReadings(text, file);
  if (inputs.pictureFile === null || gauge.takes !== 'picture') return { raw: inputs, picture: null };
  const beside = isAbsolute(inputs.pictureFile)
    ? inputs.pictureFile
    : join(dirname(path), inputs.pictureFile);
  const named = await readBytes(beside, shell);
  return { raw: inputs, picture: decodePicture(named.bytes, named.file) };
}

function wrongKind(gauge: Gauge, where: string): Refusal {
  return gauge.takes === 'picture'
    ? new Refusal({
        where,
        what: `\`${gauge.name}\` takes a picture`,
        mend: 'Name a PNG or a JPEG, or JSON whose `file` names one.',
      })
    : new Refusal({
        where,
        what: `\`${gauge.name}\` takes a table of readings`,
        mend: `Give ${gauge.columns.map(({ name }) => `\`${name}\``).join(' and ')} as columns with units in the heading.`,
      });
}
