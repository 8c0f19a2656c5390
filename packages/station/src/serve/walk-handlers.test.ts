import { walkStands } from '@coreward/contract';
import { expect, test } from 'vitest';
import { openPage, type Page, withStation } from '../fake-page.ts';
import { fakeWorld } from '../fake-world.ts';
import { newId } from '../world.ts';

const ids = fakeWorld('walk ids');
const screw = { mirror: 'M2', axis: 'horizontal' } as const;

async function begun(page: Page, changes: object = {}) {
  const { launches } = (await page.ask('/api/launches')).json;
  const [{ id: launch }] = launches;
  const body = { write: newId(ids), procedure: 'taught', meter: 'typed', practice: { seed: 7 }, ...changes };
  const answer = await page.ask(`/api/launches/${launch}/walk`, { method: 'POST', body });
  return { launch, body, answer, walk: answer.json.walk };
}

const post = (page: Page, path: string, body: object) => page.ask(path, { method: 'POST', body });
const did = (reading: number) => ({
  do: 'answer',
  answer: { outcome: 'did', standing: reading, highest: reading },
});

test('a practice walk goes on where it was after a restart, screws and all', () =>
  withStation(async ({ station, restart }) => {
    const page = await openPage(station);
    const { launch, walk } = await begun(page);
    expect(walk).toMatchObject({ launch, version: 1, seed: 7, meter: 'power', acts: [] });
    const turn = { write: newId(ids), screw, turns: 1 / 16 };
    const turned = await post(page, `/api/walks/${walk.id}/turns`, turn);
    expect(turned.json.meter).toBeGreaterThan(0);
    expect((await post(page, `/api/walks/${walk.id}/turns`, turn)).json).toEqual(turned.json);
    const hand = { write: newId(ids), after: 0 };
    const handed = await post(page, `/api/walks/${walk.id}/hand`, hand);
    expect(walkStands.parse(handed.json).walk?.acts).toHaveLength(1);
    // sent again after a lost connection: done once
    expect((await post(page, `/api/walks/${walk.id}/hand`, hand)).json).toEqual(handed.json);
    await restart();
    expect((await page.ask(`/api/launches/${launch}/walk`)).json).toEqual(handed.json);
    const again = await post(page, `/api/walks/${walk.id}/hand`, { write: newId(ids), after: 1 });
    expect(again.json.walk.acts).toHaveLength(2);
  }));

test('of two pages that answer one step the second is told what is asked now', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { walk } = await begun(page, { practice: null });
    const acts = `/api/walks/${walk.id}/acts`;
    expect((await post(page, acts, { write: newId(ids), after: 0, act: did(0.01) })).status).toBe(200);
    const second = await post(page, acts, { write: newId(ids), after: 0, act: did(0.02) });
    expect(second).toMatchObject({ status: 409, json: { code: 'stale', current: { acts: [did(0.01)] } } });
    const undone = await post(page, acts, { write: newId(ids), after: 1, act: { do: 'undo' } });
    expect(undone.json.walk.acts).toHaveLength(2);
    const nothing = await post(page, acts, { write: newId(ids), after: 2, act: { do: 'undo' } });
    expect(nothing.status).toBe(409);
  }));

test('every page hears of an answer and of a turned screw', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { walk } = await begun(page);
    const live = await page.listen();
    expect((await live.next()).type).toBe('hello');
    await post(page, `/api/walks/${walk.id}/turns`, { write: newId(ids), screw, turns: 0.25 });
    expect(await live.next()).toMatchObject({ type: 'meter', walk: walk.id });
    await post(page, `/api/walks/${walk.id}/acts`, { write: newId(ids), after: 0, act: did(0.01) });
    const heard = await live.next();
    expect(heard).toMatchObject({ type: 'entry', entry: { kind: 'walk', launch: walk.launch } });
    live.socket.close();
  }));

test('an answer without its reading is refused, and a screw of a real bench is turned by nobody here', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { walk, launch, body } = await begun(page, { practice: null });
    const acts = `/api/walks/${walk.id}/acts`;
    const none = { do: 'answer', answer: { outcome: 'did' } };
    const refused = await post(page, acts, { write: newId(ids), after: 0, act: none });
    expect(refused).toMatchObject({ status: 422, json: { refused: [{ what: 'there is no reading' }] } });
    const turn = { write: newId(ids), screw, turns: 0.25 };
    expect((await post(page, `/api/walks/${walk.id}/turns`, turn)).status).toBe(422);
    expect((await post(page, `/api/walks/${newId(ids)}/turns`, turn)).status).toBe(404);
    // begun twice under one name is begun once; a new one takes its place
    expect((await post(page, `/api/launches/${launch}/walk`, body)).json.walk.id).toBe(walk.id);
    const next = await begun(page, { practice: null });
    const late = await post(page, acts, { write: newId(ids), after: 0, act: did(1) });
    expect(late).toMatchObject({ status: 409, json: { current: { id: next.walk.id } } });
  }));

test('a launch that cannot be walked says what it lacks, and no walk is begun', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const launch = newId(ids);
    const text =
      'coreward: 1\nlaser: { wavelength: 520 nm, power: 1 mW, beam: { diameter: 1 mm, at: 100 mm } }\ncollimator: { focal length: 8 mm }\nfibre: { type: G.652.D }\n';
    const kept = await page.ask(`/api/launches/${launch}`, {
      method: 'PUT',
      body: { write: newId(ids), base: 0, text, putAway: false, invented: false },
    });
    expect(kept.status).toBe(200);
    const body = { write: newId(ids), procedure: 'ridge', meter: 'typed', practice: null };
    const refused = await post(page, `/api/launches/${launch}/walk`, body);
    expect(refused).toMatchObject({ status: 422, json: { refused: [{ where: 'launch.path' }] } });
    expect((await page.ask(`/api/launches/${launch}/walk`)).json).toEqual({ walk: null, meter: null });
  }));
