import { noLine, numberOfAnswer, printable, readLine, recogniseLines, splitLines } from '@coreward/bench';
import type { DeviceLink, TriedDevice, TryDevice } from '@coreward/contract';
import { Declined } from '../declined.ts';
import type { Connection, LinkTrouble } from './connection.ts';
import { connect } from './link.ts';

/** How long a device is listened to, ms, unless it says enough sooner; a slow meter speaks once a second. */
const listensFor = 2_500;
const enoughLines = 40;
/** An answer that takes longer is none, ms. */
const answerWithin = 1_500;

/** Queries for one reading, by their place in the standard's measurement instructions. @source SCPI-99, volume 2, chapter 3; from memory */
const queries = ['READ?', 'MEAS?', 'FETC?'] as const;

/**
 * Opens a device for a moment, to see what it says.
 *
 * @throws {Declined} if it cannot be opened
 */
export async function tryDevice(device: TryDevice): Promise<TriedDevice> {
  const { heard, ask, end } = await opened(device.link);
  try {
    if (device.speaks === 'lines') {
      const lines = (await heard(listensFor, enoughLines)).slice(0, enoughLines);
      // the first may have been caught in its middle
      const format = recogniseLines(lines.slice(1)) ?? recogniseLines(lines);
      const last = format === null ? null : readLine(lines.at(-1) ?? '', format);
      const value = last?.kind === 'value' ? last.value : null;
      return { speaks: 'lines', lines: lines.map(withTabs), format, value };
    }
    const identity = await ask('*IDN?');
    for (const query of queries) {
      const number = numberOfAnswer((await ask(query)) ?? '');
      if (number === null) continue;
      const value = number.kind === 'value' ? number.value : null;
      return { speaks: 'scpi', identity: shown(identity), query, value };
    }
    return { speaks: 'scpi', identity: shown(identity), query: null, value: null };
  } finally {
    end();
  }
}

/** Control characters are shown; a tab stays what it is, for it may be what stands between columns. */
const withTabs = (line: string): string =>
  line
    .split('\t')
    .map((part) => printable(part))
    .join('\t');

const shown = (text: string | null): string | null => (text === null ? null : printable(text).slice(0, 200));

/** A device that is open. */
interface Opened {
  /** Lines that come within a time, or until there are so many. */
  readonly heard: (within: number, most: number) => Promise<readonly string[]>;
  /** The one line that answers; null if none comes. */
  readonly ask: (query: string) => Promise<string | null>;
  readonly end: () => void;
}

function opened(link: DeviceLink): Promise<Opened> {
  return new Promise((resolve, reject) => {
    let rest = noLine;
    const lines: string[] = [];
    let wake = () => {};
    let dropped = false;
    const connection: Connection = connect(link, {
      opened: () => resolve({ heard, ask, end: () => connection.end() }),
      said(text) {
        const split = splitLines(rest, text);
        rest = split.rest;
        // a device that floods is not waited for and not kept
        if (lines.length < 2 * enoughLines) lines.push(...split.lines);
        wake();
      },
      dropped: ({ parts }: LinkTrouble) => {
        dropped = true;
        wake();
        reject(new Declined('refused', parts));
      },
    });

    async function heard(within: number, most: number): Promise<readonly string[]> {
      await new Promise<void>((done) => {
        const late = setTimeout(done, within);
        wake = () => {
          if (lines.length < most && !dropped) return;
          clearTimeout(late);
          done();
        };
        wake();
      });
      return lines.splice(0);
    }

    async function ask(query: string): Promise<string | null> {
      lines.length = 0;
      connection.send(`${query}\n`);
      return (await heard(answerWithin, 1))[0] ?? null;
    }
  });
}
