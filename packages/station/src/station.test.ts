import { mkdirSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { join } from 'node:path';
import { fiveLinesLaunch } from '@coreward/bench';
import { keptLaunch, partsAnswer, refusedAnswer, routes, statusAnswer } from '@coreward/contract';
import { expect, test } from 'vitest';
import { ask, openPage, withStation } from './fake-page.ts';
import { fakeWorld, inFolder } from './fake-world.ts';
import { startStation, usualPort } from './station.ts';
import { newId } from './world.ts';

const ids = fakeWorld('ids');
const newLaunch = (changes: object = {}) => ({
  write: newId(ids),
  base: 0,
  text: fiveLinesLaunch,
  putAway: false,
  invented: false,
  ...changes,
});

test('what a page keeps is answered, listed, kept through a restart and never overwritten', () =>
  withStation(async ({ station, restart }) => {
    const page = await openPage(station);
    const id = newId(ids);
    const path = `/api/launches/${id}`;
    const kept = await page.ask(path, { method: 'PUT', body: newLaunch() });
    expect(kept.status).toBe(200);
    expect(keptLaunch.parse(kept.json)).toMatchObject({ id, version: 1, text: fiveLinesLaunch });
    const named = fiveLinesLaunch.replace('coreward: 1', 'coreward: 1\nname: evening');
    await page.ask(path, { method: 'PUT', body: newLaunch({ base: 1, text: named }) });
    await restart();
    // the page did not reload: it is known by the same cookie
    expect((await page.ask(path)).json).toMatchObject({ version: 2, name: 'evening', text: named });
    expect((await page.ask(`${path}/versions/1`)).json.text).toBe(fiveLinesLaunch);
    const { versions } = (await page.ask(`${path}/versions`)).json;
    expect(versions.map(({ version }: { version: number }) => version)).toEqual([2, 1]);
    const { launches } = (await page.ask('/api/launches')).json;
    expect(launches.map(({ invented }: { invented: boolean }) => invented).sort()).toEqual([false, true]);
  }));

test('a stale write is answered with what the book holds', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const path = `/api/launches/${newId(ids)}`;
    await page.ask(path, { method: 'PUT', body: newLaunch() });
    const stale = await page.ask(path, { method: 'PUT', body: newLaunch() });
    expect(stale.status).toBe(409);
    expect(refusedAnswer.parse(stale.json)).toMatchObject({ code: 'stale', current: { version: 1 } });
  }));

test('a write sent again after a lost connection is applied once', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const path = `/api/launches/${newId(ids)}`;
    const body = newLaunch();
    const once = await page.ask(path, { method: 'PUT', body });
    const twice = await page.ask(path, { method: 'PUT', body });
    expect(twice).toMatchObject({ status: 200, json: once.json });
    expect((await page.ask(`${path}/versions`)).json.versions).toHaveLength(1);
  }));

test('a launch that cannot be read is refused with line, reason and mend, and not kept', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const path = `/api/launches/${newId(ids)}`;
    const text = fiveLinesLaunch.replace('8 mm', '8');
    const refused = await page.ask(path, { method: 'PUT', body: newLaunch({ text }) });
    expect(refused.status).toBe(422);
    const [first] = refusedAnswer.parse(refused.json).refused;
    expect(first?.where).toMatch(/^launch:3:\d+ collimator.focal length$/u);
    expect(first?.mend).toContain('8 mm');
    expect((await page.ask(path)).status).toBe(404);
  }));

test('the drawer is there from the first start, and a part stays of its kind', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { parts } = partsAnswer.parse((await page.ask('/api/parts')).json);
    expect(parts).toHaveLength(21);
    const [laser] = parts;
    expect(laser).toMatchObject({ kind: 'laser', name: 'blue diode', invented: true });
    const write = { write: newId(ids), base: 1, text: laser?.text, putAway: true, invented: true };
    const path = `/api/parts/${laser?.id}`;
    const wrong = await page.ask(path, { method: 'PUT', body: { ...write, kind: 'fibre' } });
    expect(wrong).toMatchObject({ status: 422, json: { refused: [{ what: 'this is a laser' }] } });
    const right = await page.ask(path, { method: 'PUT', body: { ...write, kind: 'laser' } });
    expect(right).toMatchObject({ status: 200, json: { putAway: true, version: 2 } });
    expect((await page.ask(`${path}/versions`)).json.versions).toHaveLength(2);
    expect((await page.ask(`/api/launches/${laser?.id}`)).status).toBe(404);
  }));

test('settings are kept with a version, like everything else', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const first = (await page.ask('/api/settings')).json;
    const settings = { ...first.settings, theme: 'light' };
    const write = { write: newId(ids), base: first.version, settings };
    const kept = await page.ask('/api/settings', { method: 'PUT', body: write });
    expect(kept.json).toMatchObject({ version: first.version + 1, settings });
    const stale = await page.ask('/api/settings', { method: 'PUT', body: { ...write, write: newId(ids) } });
    expect(stale).toMatchObject({ status: 409, json: { current: { settings } } });
    const path = { ...settings, drawerPath: 'coreward: 1\n' };
    const wrong = await page.ask('/api/settings', {
      method: 'PUT',
      body: { write: newId(ids), base: 2, settings: path },
    });
    expect(wrong).toMatchObject({ status: 422, json: { refused: [{ what: 'there is no path in it' }] } });
  }));

test('entries are added, listed and never changed', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const [{ id: launch }] = (await page.ask('/api/launches')).json.launches;
    const body = { write: newId(ids), kind: 'note', launch, data: { text: 'bright' } };
    const kept = await page.ask('/api/entries', { method: 'POST', body });
    expect(kept).toMatchObject({ status: 200, json: { id: body.write, launch, data: { text: 'bright' } } });
    expect((await page.ask('/api/entries', { method: 'POST', body })).json).toEqual(kept.json);
    const other = await page.ask('/api/entries', { method: 'POST', body: { ...body, data: 2 } });
    expect(other.status).toBe(422);
    const asked = await page.ask(`/api/entries?launch=${launch}&kind=note`);
    expect(asked.json).toEqual({ entries: [kept.json], more: false });
    expect((await page.ask('/api/entries?before=nothing')).status).toBe(400);
    expect((await page.ask(`/api/entries?before=${newId(ids)}`)).status).toBe(404);
    const nowhere = { ...body, write: newId(ids), launch: newId(ids) };
    expect((await page.ask('/api/entries', { method: 'POST', body: nowhere })).status).toBe(422);
    const long = { ...body, write: newId(ids), data: 'x'.repeat(70_000) };
    expect((await page.ask('/api/entries', { method: 'POST', body: long })).status).toBe(413);
  }));

test('the station says what it is, and gives everything out as one document', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    expect(statusAnswer.parse((await page.ask('/api/status')).json)).toMatchObject({
      you: 'here',
      lan: false,
    });
    const { json } = await page.ask('/api/export');
    expect(json).toMatchObject({ coreward: 1, contents: 'bench book', entries: [] });
    expect(json.documents).toHaveLength(23);
  }));

test('every route of the contract is answered', () =>
  withStation(async ({ station, faults }) => {
    const page = await openPage(station);
    for (const { method, path, request } of Object.values(routes)) {
      const address = path.replace(':version', '1').replace(':id', newId(ids));
      const { status, json } = await page.ask(address, request === null ? { method } : { method, body: {} });
      if (status !== 200) expect(refusedAnswer.safeParse(json).success).toBe(true);
      if (request !== null) expect(status).toBe(400);
    }
    expect(faults).toEqual([]);
  }));

test('what is not JSON, not said to be, or has a key too many, is refused', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const path = `/api/launches/${newId(ids)}`;
    const json = { 'content-type': 'application/json' };
    expect((await page.ask(path, { method: 'PUT', raw: '{', headers: json })).status).toBe(400);
    expect((await page.ask(path, { method: 'PUT', raw: JSON.stringify(newLaunch()) })).status).toBe(400);
    const extra = await page.ask(path, { method: 'PUT', body: newLaunch({ owner: 'me' }) });
    expect(extra).toMatchObject({ status: 400, json: { refused: [{ what: 'nobody knows `owner` here' }] } });
    expect((await page.ask(`/api/launches/not-an-id`, { method: 'PUT', body: newLaunch() })).status).toBe(
      400,
    );
  }));

/** A folder as the build leaves it. */
function builtScreens(folder: string): string {
  const screens = join(folder, 'screens');
  mkdirSync(join(screens, 'assets'), { recursive: true });
  writeFileSync(join(screens, 'index.html'), '<!doctype html><html><head><title>C</title></head></html>');
  writeFileSync(join(screens, 'assets/main-1a2b.js'), `console.log(1); //${'x'.repeat(2000)}`);
  writeFileSync(join(screens, 'icon.svg'), '<svg/>');
  return screens;
}

test('the screens are served: the page never stored, files by name for good, every address of the app the page', () =>
  inFolder((folder) =>
    withStation(
      async ({ station }) => {
        const { origin } = new URL(station.address);
        for (const path of ['/', '/index.html', '/launches/abc', '/drawer']) {
          const page = await ask(`${origin}${path}`);
          expect(page.status).toBe(200);
          expect(page.headers['content-type']).toMatch(/^text\/html/u);
          expect(page.headers['cache-control']).toBe('no-store');
        }
        const script = await ask(`${origin}/assets/main-1a2b.js`);
        expect(script.headers).toMatchObject({
          'content-type': 'text/javascript; charset=utf-8',
          'cache-control': 'public, max-age=31536000, immutable',
        });
        const zipped = await ask(`${origin}/assets/main-1a2b.js`, {
          headers: { 'accept-encoding': 'gzip, br' },
        });
        expect(zipped.headers['content-encoding']).toBe('gzip');
        const icon = await ask(`${origin}/icon.svg`);
        expect(icon.headers['cache-control']).toBe('no-cache');
        const again = await ask(`${origin}/icon.svg`, {
          headers: { 'if-none-match': String(icon.headers.etag) },
        });
        expect(again).toMatchObject({ status: 304, text: '' });
        expect((await ask(`${origin}/assets/gone.js`)).status).toBe(404);
      },
      { screens: builtScreens(folder) },
    ),
  ));

test('screens that have not been built are missed in words', () =>
  withStation(async ({ station }) => {
    expect((await ask(station.address)).text).toContain('npm run build');
  }));

test('a port in use is passed over, unless it was asked for', async () => {
  const other = createServer();
  await new Promise<void>((resolve) => other.listen(0, '127.0.0.1', resolve));
  const { port } = other.address() as AddressInfo;
  await inFolder(async (folder) => {
    const options = {
      world: fakeWorld(),
      folder,
      screens: '/nowhere',
      lan: false,
      version: '0',
      fault: () => {},
    };
    await expect(startStation({ ...options, port })).rejects.toThrow(
      `port ${port}: another program listens there`,
    );
    const one = await startStation({ ...options, port: null });
    const two = await startStation({ ...options, folder: join(folder, 'two'), port: null });
    const ports = [one, two].map(({ address }) => Number(new URL(address).port));
    expect(ports[0]).toBeGreaterThanOrEqual(usualPort);
    expect(ports[1]).toBeGreaterThan(ports[0] ?? 0);
    await Promise.all([one.stop(), two.stop()]);
  });
  other.close();
});
