import { fiveLinesLaunch } from '@coreward/bench';
import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import { importBook } from '../exchange/import-book.ts';
import { openPage, type Page, pageWith, withStation } from '../fake-page.ts';
import { type FakeWorld, fakeWorld } from '../fake-world.ts';
import { newId } from '../world.ts';

const ids = fakeWorld('live');

async function keep(page: Page, id = newId(ids), base = 0): Promise<{ id: string; write: string }> {
  const write = newId(ids);
  const body = { write, base, text: fiveLinesLaunch, putAway: false, invented: false };
  const { status } = await page.ask(`/api/launches/${id}`, { method: 'PUT', body });
  expect(status).toBe(200);
  return { id, write };
}

const note = (page: Page) =>
  page.ask('/api/entries', {
    method: 'POST',
    body: { write: newId(ids), kind: 'note', launch: null, data: { text: 'bright' } },
  });

test('every page hears of every change, in order, the one that made it too', () =>
  withStation(async ({ station }) => {
    const [one, two] = [await openPage(station), await openPage(station)];
    const [hearsOne, hearsTwo] = [await one.listen(), await two.listen()];
    const hello = await hearsOne.next();
    expect(await hearsTwo.next()).toEqual(hello);
    expect(hello).toMatchObject({ type: 'hello', startOver: false });
    const { id, write } = await keep(one);
    await note(two);
    for (const page of [hearsOne, hearsTwo]) {
      const first = await page.next();
      expect(first).toMatchObject({
        type: 'launch',
        write,
        launch: { id, version: 1, text: fiveLinesLaunch },
      });
      expect(await page.next()).toMatchObject({ type: 'entry', entry: { data: { text: 'bright' } } });
    }
  }));

test('a page that was away is told what it missed, and nothing twice', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const before = await page.listen();
    const hello = await before.next();
    if (hello.type !== 'hello') throw new Error('no hello');
    const { id } = await keep(page);
    const seen = await before.next();
    before.socket.terminate();
    await keep(page, id, 1);
    await note(page);
    const since = seen.type === 'launch' ? seen.sequence : 0;
    const after = await page.listen(`?book=${hello.book}&since=${since}`);
    expect(await after.next()).toMatchObject({ type: 'hello', startOver: false });
    expect(await after.next()).toMatchObject({ type: 'launch', sequence: since + 1, launch: { version: 2 } });
    expect(await after.next()).toMatchObject({ type: 'entry', sequence: since + 2 });
    await keep(page);
    expect(await after.next()).toMatchObject({ sequence: since + 3 });
  }));

test('a page finds its station again after a restart, and is told what it missed', () =>
  withStation(async ({ station, restart }) => {
    const page = await openPage(station);
    const before = await page.listen();
    const hello = await before.next();
    if (hello.type !== 'hello') throw new Error('no hello');
    const { write } = await keep(page);
    const again = await restart();
    expect(await before.closed).toBe(1001);
    const after = await pageWith(again.address, page.cookie).listen(
      `?book=${hello.book}&since=${hello.sequence}`,
    );
    expect(await after.next()).toMatchObject({ type: 'hello', book: hello.book, startOver: false });
    expect(await after.next()).toMatchObject({ type: 'launch', write });
  }));

test('a page of another book, or from the future, must start over', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { book, sequence } = (await page.ask('/api/status')).json;
    for (const query of [
      `?book=${newId(ids)}&since=0`,
      `?book=${book}&since=${sequence + 1}`,
      `?book=${book}&since=-1`,
      '?since=0',
    ]) {
      const live = await page.listen(query);
      expect(await live.next()).toMatchObject({ type: 'hello', sequence, startOver: true });
      live.socket.close();
    }
  }));

/** A book with so many entries in it. */
function busy(count: number) {
  return (folder: string, world: FakeWorld) => {
    const book = new BenchBook(folder, world);
    const entries = Array.from({ length: count }, () => ({
      id: newId(ids),
      time: world.now().toISOString(),
      kind: 'note',
      launch: null,
      data: 1,
    }));
    importBook(book, { documents: [], entries });
    book.close();
  };
}

test('a page that missed more than 500 changes must start over, one that missed 500 need not', () =>
  withStation(
    async ({ station }) => {
      const page = await openPage(station);
      const { book } = (await page.ask('/api/status')).json;
      const far = await page.listen(`?book=${book}&since=0`);
      expect(await far.next()).toMatchObject({ type: 'hello', sequence: 501, startOver: true });
      const near = await page.listen(`?book=${book}&since=1`);
      expect(await near.next()).toMatchObject({ type: 'hello', startOver: false });
      for (let sequence = 2; sequence <= 501; sequence += 1) {
        expect(await near.next()).toMatchObject({ type: 'entry', sequence });
      }
    },
    { before: busy(501) },
  ));

test('more pages than anyone opens are turned away', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const pages = [];
    for (let count = 0; count < 64; count += 1) pages.push(await page.listen());
    await expect(page.listen()).rejects.toThrow('503');
    pages[0]?.socket.close();
    await pages[0]?.closed;
    // the station hears of the closing a moment after the page
    await expect
      .poll(() =>
        page.listen().then(
          () => 'let in',
          () => 'turned away',
        ),
      )
      .toBe('let in');
  }));
