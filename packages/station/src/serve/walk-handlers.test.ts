import { sessionOf } from '@coreward/bench';
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
  const body = {
    write: newId(ids),
    procedure: 'taught',
    reads: { by: 'typed' },
    goesOn: false,
    practice: { seed: 7 },
    ...changes,
  };
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
    expect(walk).toMatchObject({ launch, version: 1, seed: 7, reads: { meter: 'power' }, acts: [] });
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

test('a practice bench says whether its beam is blocked, and its truth only with the verdict', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { launch, answer, walk } = await begun(page, { procedure: 'ridge' });
    expect(answer.json.practice).toEqual({ isBlocked: false, turned: null, truth: null });
    await post(page, `/api/walks/${walk.id}/beam`, { write: newId(ids), blocked: true });
    const blocked = (await page.ask(`/api/launches/${launch}/walk`)).json;
    expect(blocked.practice).toEqual({ isBlocked: true, turned: null, truth: null });
    let stands = walkStands.parse(blocked);
    for (let after = 0; after < 200 && stands.practice?.truth === null; after += 1) {
      const handed = await post(page, `/api/walks/${walk.id}/hand`, { write: newId(ids), after });
      stands = walkStands.parse(handed.json);
    }
    // the hand clears the beam; a walk that claims its peak is near it (docs/walk.md), and the four screws are told
    expect(stands.practice?.isBlocked).toBe(false);
    expect(stands.practice?.truth?.share).toBeGreaterThan(0.5);
    expect(stands.practice?.truth?.share).toBeLessThanOrEqual(1);
    expect(stands.practice?.truth?.offsets).toHaveLength(4);
    const real = await begun(page, { practice: null });
    expect(real.answer.json.practice).toBeNull();
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

type Live = Awaited<ReturnType<Page['listen']>>;

/** The next message of one kind. */
async function nextOf(live: Live, type: string) {
  for (;;) {
    const message = await live.next();
    if (message.type === type) return message;
  }
}

test('every page hears of an answer, and sees by the live meter that a screw was turned and the beam blocked', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { walk } = await begun(page);
    const { instrument } = walk.reads;
    const live = await page.listen();
    const shown = async () => {
      // what is on its way was read before
      for (let i = 0; i < 3; i += 1) await nextOf(live, 'readings');
      const message = await nextOf(live, 'readings');
      expect(message).toMatchObject({ instrument });
      const values = (message as { readings: readonly { value: number }[] }).readings.map(
        ({ value }) => value,
      );
      return values.at(-1)!;
    };
    const before = await shown();
    await post(page, `/api/walks/${walk.id}/turns`, { write: newId(ids), screw, turns: 0.25 });
    const after = await shown();
    // a quarter turn is some twelve half-widths of the peak: either side of it light changes by far more than noise
    expect(Math.abs(Math.log(after / before))).toBeGreaterThan(0.3);
    await post(page, `/api/walks/${walk.id}/turns`, { write: newId(ids), screw, turns: -0.25 });
    const back = await shown();
    expect(
      (await post(page, `/api/walks/${walk.id}/beam`, { write: newId(ids), blocked: true })).status,
    ).toBe(200);
    expect(await shown()).toBeLessThan(back);
    await post(page, `/api/walks/${walk.id}/acts`, { write: newId(ids), after: 0, act: did(0.01) });
    expect(await nextOf(live, 'entry')).toMatchObject({ entry: { kind: 'walk', launch: walk.launch } });
    live.socket.close();
  }));

test('the screw that was turned last in a step is told to every page, after a restart as well, and no more of it in the next', () =>
  withStation(async ({ station, restart }) => {
    const page = await openPage(station);
    const { launch, walk } = await begun(page);
    const stands = async () => walkStands.parse((await page.ask(`/api/launches/${launch}/walk`)).json);
    const turn = (turns: number) =>
      post(page, `/api/walks/${walk.id}/turns`, { write: newId(ids), screw, turns });
    await turn(0); // looks at the meter only
    expect((await stands()).practice?.turned).toBeNull();
    await turn(1 / 16);
    await turn(1 / 64);
    expect((await stands()).practice?.turned).toEqual({ screw, turns: 5 / 64 });
    await restart();
    expect((await stands()).practice?.turned).toEqual({ screw, turns: 5 / 64 });
    await post(page, `/api/walks/${walk.id}/hand`, { write: newId(ids), after: 0 });
    expect((await stands()).practice?.turned).toBeNull();
  }));

test('looking at a practice bench changes nothing of what is done there afterwards', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const answers: unknown[] = [];
    for (const looks of [0, 700]) {
      const { walk } = await begun(page);
      await new Promise((done) => setTimeout(done, looks));
      const handed = await post(page, `/api/walks/${walk.id}/hand`, { write: newId(ids), after: 0 });
      answers.push(handed.json.walk.acts);
    }
    expect(answers[1]).toEqual(answers[0]);
  }));

test('what reads is kept with the walk: typing for an instrument goes on, another one begins anew', () =>
  withStation(async ({ station, restart }) => {
    const page = await openPage(station);
    const { launch, walk } = await begun(page, { practice: null });
    const instrument = async (unit: string, floor: number | null) => {
      const id = newId(ids);
      const setup = { kind: 'typed', unit };
      const body = { name: `meter in ${unit}`, setup, floor, saturation: null };
      expect((await page.ask(`/api/instruments/${id}`, { method: 'PUT', body })).status).toBe(200);
      return id;
    };
    const [watts, others] = [await instrument('W', 2e-9), await instrument('V', null)];
    let after = 0;
    const act = async (path: string, body: object) => {
      const answer = await post(page, `/api/walks/${walk.id}/${path}`, { write: newId(ids), after, ...body });
      expect(answer.status).toBe(200);
      after = answer.json.walk.acts.length;
      return answer.json.walk;
    };
    const reads = (chosen: object, anew = false) => act('reads', { reads: chosen, goesOn: true, anew });
    await act('acts', { act: did(0.01) });
    const by = await reads({ by: 'instrument', id: watts });
    const kept = { instrument: watts, meter: 'power', floor: 2e-9, goesOn: true };
    expect(by.acts.at(-1)).toEqual({ do: 'reads', reads: kept, anew: false });
    expect(by.times).toHaveLength(by.acts.length);
    // another meter: the dark reading was asked already, but of the one before; this one says its own
    await act('acts', { act: did(1e-6) });
    await reads({ by: 'typed' });
    await act('acts', { act: did(1.1e-6) });
    await reads({ by: 'instrument', id: watts });
    expect(sessionOf(by, (await reads({ by: 'instrument', id: watts })).acts).answers).toHaveLength(2);
    const other = await reads({ by: 'instrument', id: others });
    expect(sessionOf(other, other.acts)).toMatchObject({ answers: [], meter: 'voltage', floor: null });
    await restart();
    expect((await page.ask(`/api/launches/${launch}/walk`)).json.walk).toEqual(other);
    const { entries } = (await page.ask('/api/entries?kind=walk')).json;
    const said = entries.map(({ data }: { data: { text: string } }) => data.text);
    expect(said).toContain('read by meter in V, begun anew from where the screws stand');
    expect(said).toContain('readings typed');
    const eye = { write: newId(ids), reads: { by: 'instrument', id: await byEye(page) }, goesOn: false };
    const refused = await post(page, `/api/walks/${walk.id}/reads`, { ...eye, after, anew: false });
    expect(refused).toMatchObject({
      status: 422,
      json: { refused: [{ mend: 'Walk by eye, or choose a meter.' }] },
    });
  }));

async function byEye(page: Page): Promise<string> {
  const id = newId(ids);
  const body = { name: 'eye', setup: { kind: 'by-eye' }, floor: null, saturation: null };
  await page.ask(`/api/instruments/${id}`, { method: 'PUT', body });
  return id;
}

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
    const body = {
      write: newId(ids),
      procedure: 'ridge',
      reads: { by: 'typed' },
      goesOn: false,
      practice: null,
    };
    const refused = await post(page, `/api/launches/${launch}/walk`, body);
    expect(refused).toMatchObject({ status: 422, json: { refused: [{ where: 'launch.path' }] } });
    expect((await page.ask(`/api/launches/${launch}/walk`)).json).toEqual({ walk: null, practice: null });
  }));
