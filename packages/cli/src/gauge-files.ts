import { dirname, isAbsolute, join } from 'node:path';
import {
  assign,
  type Gauge,
  type Picture,
  pictureFormat,
  type RawReadings,
  type RawSetting,
  type Readings,
  Refusal,
  readReadings,
  textOfBytes,
} from '@coreward/bench';
import { decodePicture } from './decode-picture.ts';
import { type FileBytes, readBytes } from './read-bytes.ts';
import type { Shell } from './shell.ts';

/** What the files of a gauge hold, and what in them it has no use for. */
export interface GaugeFiles {
  readonly readings: Readings;
  readonly unused: readonly string[];
}

/**
 * What one file holds: a table, a picture, or JSON that may name a picture beside it.
 *
 * @param typed settings of the command line, which go before those in the file
 * @throws {Refusal} for a file that cannot be read, or of a kind that the gauge does not take
 */
export async function readingsFor(
  gauge: Gauge,
  path: string,
  typed: readonly RawSetting[],
  shell: Shell,
): Promise<GaugeFiles> {
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

/**
 * The pictures of two beams, forward then reverse.
 *
 * @throws {Refusal} for a file that is no picture
 */
export async function pairFor(
  gauge: Gauge,
  paths: readonly [string, string],
  typed: readonly RawSetting[],
  shell: Shell,
): Promise<GaugeFiles> {
  const [picture, reversePicture] = [await pictureIn(paths[0], shell), await pictureIn(paths[1], shell)];
  const { readings, unused } = assign(gauge, { where: paths.join(', '), columns: [], settings: typed });
  return { readings: { ...readings, picture, reversePicture }, unused };
}

async function pictureIn(path: string, shell: Shell): Promise<Picture> {
  const { bytes, file } = await readBytes(path, shell);
  return decodePicture(bytes, file);
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
