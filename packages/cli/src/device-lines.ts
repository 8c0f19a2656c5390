import {
  type LineFormat,
  noLine,
  type Reading,
  Refusal,
  readingUnitOf,
  readLine,
  recogniseLines,
  splitLines,
  type UnfinishedLine,
} from '@coreward/bench';
import type { Shell } from './shell.ts';

/** So many lines show how a device writes its readings. */
const sampleLines = 6;

/** A device that prints a reading a line, its form recognised. */
export interface ListenedTo {
  readonly format: LineFormat;
  /** As they come; it ends when the device is gone. */
  readonly readings: AsyncIterator<Reading>;
}

/**
 * Listens to a device, a pipe or a file until it is known how its lines are read.
 *
 * @throws {Refusal} if it cannot be opened, or nothing in its first lines looks like a reading
 */
export async function listenTo(path: string, shell: Shell): Promise<ListenedTo> {
  const lines = linesOf(path, shell);
  const sample: string[] = [];
  // the first line may have begun before anybody listened
  for (let first = true; sample.length < sampleLines; first = false) {
    const next = await lines.next();
    if (next.done === true) break;
    if (!first) sample.push(next.value);
  }
  const format = recogniseLines(sample);
  if (format === null) {
    await lines.return?.(undefined);
    throw new Refusal({
      where: `--lines ${path}`,
      what: 'nothing in its first lines looks like a reading',
      mend: 'Let it print a number on each line, such as `1.2 mW`; a serial port is set with `stty` first.',
    });
  }
  return { format, readings: readingsOf(lines, format, shell) };
}

async function* linesOf(path: string, shell: Shell): AsyncGenerator<string, void> {
  let rest: UnfinishedLine = noLine;
  try {
    for await (const piece of shell.listen(path)) {
      const split = splitLines(rest, piece);
      rest = split.rest;
      yield* split.lines;
    }
  } catch (error) {
    if (!(error instanceof Error && 'code' in error)) throw error;
    throw new Refusal({
      where: `--lines ${path}`,
      what: `it cannot be read (${String(error.code)})`,
      mend: 'Name the device as the system does, such as `/dev/ttyUSB0`, and see that you may read it.',
    });
  }
}

async function* readingsOf(
  lines: AsyncGenerator<string, void>,
  format: LineFormat,
  shell: Shell,
): AsyncGenerator<Reading, void> {
  let highest = 0;
  try {
    for await (const line of lines) {
      const said = readLine(line, format);
      if (said === null || said.kind === 'nothing') continue;
      const isOver = said.kind === 'over';
      if (!isOver) highest = Math.max(highest, said.value);
      yield { t: shell.clock(), value: isOver ? highest : said.value, saturated: isOver };
    }
  } finally {
    await lines.return(undefined);
  }
}

/** What the readings of a device count. */
export const unitOfLines = ({ format }: ListenedTo) => readingUnitOf(format.unit);
