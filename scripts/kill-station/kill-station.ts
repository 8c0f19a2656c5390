import { randomUUID } from 'node:crypto';
import Sqlite from 'better-sqlite3';
import { bookFile } from '../../packages/station/src/bench-book/open-database.ts';
import { killedAtBirth, type Running, running } from './running.ts';

/** What came of killing a station again and again. */
export interface KillReport {
  readonly bursts: number;
  /** Writes that the station said were kept. */
  readonly acknowledged: number;
  /** Writes that were under way when it was killed, sent again to the next one. */
  readonly sentAgain: number;
  /** Everything that was not as it must be; empty if all is well. */
  readonly faults: readonly string[];
}

/** One launch that one page changes again and again, each time on the version before. */
interface Writer {
  readonly id: string;
  /** Texts of the versions that were acknowledged, in order. */
  readonly kept: string[];
  /** Sent and not answered: to be sent again, as a page does after a lost connection. */
  waiting: { readonly write: string; readonly text: string } | null;
  /** Entries that were acknowledged, by their names. */
  readonly entries: string[];
}

/** Pages that write at the same time. */
const writers = 4;
/** A burst is cut off at most so long after its first answer, ms. */
const longestBurst = 300;

/**
 * Starts a station on a folder, writes to it from several pages at once, kills it (SIGKILL) at a random moment, and so
 * on; one time in eight already while it begins. In the end everything that was acknowledged must be there.
 *
 * @param main the built command line
 * @param random from 0 to 1, for the moments
 */
export async function killStation(
  main: string,
  folder: string,
  bursts: number,
  random: () => number,
  told: (burst: number, acknowledged: number) => void = () => {},
): Promise<KillReport> {
  const all = Array.from(
    { length: writers },
    (): Writer => ({ id: randomUUID(), kept: [], waiting: null, entries: [] }),
  );
  const faults: string[] = [];
  let sentAgain = 0;
  const acknowledged = () => all.reduce((sum, { kept, entries }) => sum + kept.length + entries.length, 0);
  for (let burst = 1; burst <= bursts; burst += 1) {
    if (random() < 1 / 8) await killedAtBirth(main, folder, 50 + random() * 500);
    const station = await running(main, folder);
    const over = { yet: false };
    sentAgain += all.filter(({ waiting }) => waiting !== null).length;
    const writing = all.map((writer) => writeUntil(over, writer, station, faults));
    const before = acknowledged();
    // mostly in the midst of writing, now and then before the first answer
    const patience = random() < 1 / 4 ? 0 : 200;
    for (let looks = 0; looks < patience && acknowledged() === before; looks += 1) await passing(10);
    await passing(random() * longestBurst);
    await station.kill();
    over.yet = true;
    await Promise.all(writing);
    told(burst, acknowledged());
  }
  const last = await running(main, folder);
  for (const writer of all) await check(writer, last, faults);
  await last.kill();
  const db = new Sqlite(bookFile(folder));
  const found = db.pragma('integrity_check', { simple: true });
  if (found !== 'ok') faults.push(`integrity_check: ${String(found)}`);
  db.close();
  return { bursts, acknowledged: acknowledged(), sentAgain, faults };
}

const passing = (milliseconds: number): Promise<void> =>
  new Promise((resolve) => setTimeout(resolve, milliseconds));

/** Writes version after version, and an entry after each, until no answer comes. */
async function writeUntil(
  over: { yet: boolean },
  writer: Writer,
  { ask }: Running,
  faults: string[],
): Promise<void> {
  while (!over.yet) {
    const base = writer.kept.length;
    writer.waiting ??= { write: randomUUID(), text: launchText(writer.id, base + 1) };
    const { write, text } = writer.waiting;
    const body = { write, base, text, putAway: false, invented: false };
    const reply = await ask('PUT', `/api/launches/${writer.id}`, body);
    if (reply === null) return;
    const { version } = reply.json as { version?: number };
    if (reply.status !== 200 || version !== base + 1) {
      faults.push(`version ${base + 1} was answered with ${reply.status}: ${JSON.stringify(reply.json)}`);
      return;
    }
    writer.kept.push(text);
    writer.waiting = null;
    const entry = randomUUID();
    const data = { text: `after version ${base + 1}` };
    const noted = await ask('POST', '/api/entries', { write: entry, kind: 'note', launch: writer.id, data });
    if (noted === null) return;
    if (noted.status === 200) writer.entries.push(entry);
    else faults.push(`an entry was answered with ${noted.status}`);
  }
}

const launchText = (id: string, version: number): string => `coreward: 1
name: ${id} ${version}
laser: { wavelength: 520 nm, power: 5 mW, beam: { diameter: 1.1 mm, at: 300 mm } }
collimator: { focal length: 8 mm }
fibre: { type: G.652.D }
# ${'x'.repeat((version * 997) % 5000)}
`;

/** Everything that was acknowledged to a writer is there, and nothing twice. */
async function check(
  { id, kept, waiting, entries }: Writer,
  { ask }: Running,
  faults: string[],
): Promise<void> {
  for (const [index, text] of kept.entries()) {
    const reply = await ask('GET', `/api/launches/${id}/versions/${index + 1}`);
    const found = (reply?.json as { text?: string } | undefined)?.text;
    if (found !== text) faults.push(`version ${index + 1} of ${id} was acknowledged and is not there`);
  }
  const newest =
    ((await ask('GET', `/api/launches/${id}`))?.json as { version?: number } | undefined)?.version ?? 0;
  // what was under way at the last kill may have been kept or not
  const most = kept.length + (waiting === null ? 0 : 1);
  if (newest < kept.length || newest > most)
    faults.push(`${id} has ${newest} versions instead of ${kept.length}`);
  const there = new Set<string>();
  for (let before = ''; ; ) {
    const reply = await ask('GET', `/api/entries?launch=${id}${before === '' ? '' : `&before=${before}`}`);
    const page = reply?.json as { entries?: { id: string }[]; more?: boolean } | undefined;
    for (const entry of page?.entries ?? []) there.add(entry.id);
    before = page?.entries?.at(-1)?.id ?? '';
    if (page?.more !== true || before === '') break;
  }
  for (const entry of entries)
    if (!there.has(entry)) faults.push(`entry ${entry} was acknowledged and is not there`);
}
