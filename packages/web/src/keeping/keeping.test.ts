import { expect, test } from 'vitest';
import { type Body, contentOfText, type Thing } from './change.ts';
import { createKeeping, type Keeping } from './keeping.ts';
import { playedStorage, playStation } from './played-station.ts';
import { contentOf } from './state.ts';

const body = (text: string): Body => ({ text, putAway: false, invented: false });
const shown = (keeping: Keeping, id: string): string | null =>
  contentOfText(contentOf(keeping.get(), { kind: 'launch', id }));
const change = (keeping: Keeping, id: string, text: string): void =>
  keeping.change({ kind: 'launch', id }, body(text), `to ${text}`, '/');

async function joined(station = playStation()) {
  const keeping = createKeeping(station.world);
  keeping.join();
  await station.pass();
  expect(keeping.get().connection).toBe('joined');
  const id = keeping.newLaunch(body('one'), 'a new launch', '/');
  await station.pass();
  return { station, keeping, id };
}

const textsAt = (station: ReturnType<typeof playStation>, id: string) =>
  station.launches.get(id)?.map(({ text }) => text);

test('a change is shown at once and kept soon', async () => {
  const { station, keeping, id } = await joined();
  change(keeping, id, 'two');
  expect(shown(keeping, id)).toBe('two');
  expect(keeping.get().unkept).toHaveLength(1);
  await station.pass();
  expect(keeping.get().unkept).toHaveLength(0);
  expect(textsAt(station, id)).toEqual(['one', 'two']);
});

test('changes one after another are each kept, in their order', async () => {
  const { station, keeping, id } = await joined();
  for (const text of ['two', 'three', 'four']) change(keeping, id, text);
  await station.pass();
  expect(textsAt(station, id)).toEqual(['one', 'two', 'three', 'four']);
});

test('a write whose answer was lost is sent again under its name and applied once', async () => {
  const { station, keeping, id } = await joined();
  station.mood = 'deaf';
  change(keeping, id, 'two');
  await station.pass();
  expect(keeping.get().connection).toBe('lost');
  station.mood = 'well';
  for (let again = 0; again < 3; again += 1) await station.pass();
  expect(keeping.get()).toMatchObject({ connection: 'joined', unkept: [], clashes: [] });
  expect(station.arrived.length).toBeGreaterThan(2);
  expect(textsAt(station, id)).toEqual(['one', 'two']);
});

test('what was changed without a station is there after a reload, and kept when it is back', async () => {
  const storage = playedStorage();
  const { station, keeping, id } = await joined(playStation(storage));
  station.mood = 'down';
  change(keeping, id, 'two');
  change(keeping, id, 'three');
  await station.pass();
  keeping.leave();
  const reloaded = createKeeping(station.world);
  expect(shown(reloaded, id)).toBe('three');
  station.mood = 'well';
  reloaded.join();
  await station.pass();
  expect(textsAt(station, id)).toEqual(['one', 'two', 'three']);
  expect(storage.keys().filter((key) => key.includes('unkept'))).toEqual([]);
});

test('a full disk is said, and the change waits for room', async () => {
  const { station, keeping, id } = await joined();
  station.mood = 'full';
  change(keeping, id, 'two');
  await station.pass();
  expect(keeping.get().cannotKeep).toMatchObject([{ what: 'the disk is full' }]);
  station.mood = 'well';
  await station.pass();
  expect(keeping.get().cannotKeep).toBeNull();
  expect(textsAt(station, id)).toEqual(['one', 'two']);
});

test('a change from elsewhere is seen, and is not to be undone here', async () => {
  const { station, keeping, id } = await joined();
  station.elsewhere(id, 'theirs');
  expect(shown(keeping, id)).toBe('theirs');
  expect(keeping.get().news).toContain('a launch');
  expect(keeping.undo()).toBeNull();
});

async function clashed() {
  const made = await joined();
  made.station.mood = 'down';
  change(made.keeping, made.id, 'mine');
  await made.station.pass();
  made.station.cut();
  made.station.elsewhere(made.id, 'theirs');
  made.station.mood = 'well';
  await made.station.pass();
  await made.station.pass();
  const [clash] = made.keeping.get().clashes;
  if (clash === undefined) throw new Error('no clash');
  expect(clash).toMatchObject({ mine: { body: { text: 'mine' } }, theirs: { text: 'theirs' } });
  expect(shown(made.keeping, made.id)).toBe('mine');
  return { ...made, clash };
}

test('two changes at once clash; going on with mine keeps theirs as an earlier version', async () => {
  const { station, keeping, id, clash } = await clashed();
  keeping.settleClash(clash, 'mine', '/');
  await station.pass();
  expect(textsAt(station, id)).toEqual(['one', 'theirs', 'mine']);
  expect(keeping.get().clashes).toEqual([]);
});

test('going on with theirs gives mine back when undone', async () => {
  const { station, keeping, id, clash } = await clashed();
  keeping.settleClash(clash, 'theirs', '/');
  expect(shown(keeping, id)).toBe('theirs');
  keeping.undo();
  await station.pass();
  expect(textsAt(station, id)).toEqual(['one', 'theirs', 'mine']);
});

test('keeping both makes a launch of its own', async () => {
  const { station, keeping, clash } = await clashed();
  keeping.settleClash(clash, 'both', '/');
  await station.pass();
  expect([...station.launches.values()].map((versions) => versions.at(-1)?.text)).toEqual(['theirs', 'mine']);
});

test('undo and redo walk over every change, also after a reload', async () => {
  const session = playedStorage();
  const { station, keeping, id } = await joined(playStation(playedStorage(), session));
  change(keeping, id, 'two');
  change(keeping, id, 'three');
  expect(keeping.undo()?.what).toBe('to three');
  expect(shown(keeping, id)).toBe('two');
  await station.pass();
  keeping.leave();
  const reloaded = createKeeping(station.world);
  reloaded.join();
  await station.pass();
  await reloaded.needLaunch(id);
  expect(reloaded.redo()?.what).toBe('to three');
  expect(shown(reloaded, id)).toBe('three');
  reloaded.undo();
  reloaded.undo();
  expect(shown(reloaded, id)).toBe('one');
  // what was new is put away, never taken out
  reloaded.undo();
  const thing: Thing = { kind: 'launch', id };
  expect(contentOf(reloaded.get(), thing)).toMatchObject({ body: { text: 'one', putAway: true } });
});

test('of the settings only what is named changes, whatever else was changed while it was being worked out', async () => {
  const { station, keeping } = await joined();
  station.mood = 'down';
  keeping.changeSettings({ theme: 'light' }, 'the theme', '/');
  keeping.changeSettings({ drawerPath: 'a way' }, 'the way between', '/');
  expect(contentOf(keeping.get(), { kind: 'settings' })).toEqual({
    kind: 'settings',
    settings: { theme: 'light', drawerPath: 'a way' },
  });
});

test('the text of a launch is the one of this page, also where the station has an older one', async () => {
  const { station, keeping, id } = await joined();
  expect(await keeping.textOfLaunch(id)).toBe('one');
  station.mood = 'down';
  change(keeping, id, 'two');
  await station.pass();
  expect(await keeping.textOfLaunch(id)).toBe('two');
});
