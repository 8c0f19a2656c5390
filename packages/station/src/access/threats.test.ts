import { mkdirSync, statSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { fiveLinesLaunch } from '@coreward/bench';
import { routes } from '@coreward/contract';
import { expect, test } from 'vitest';
import { ask, listenTo, openPage, type Page, withStation } from '../fake-page.ts';
import { fakeWorld, inFolder } from '../fake-world.ts';
import { mostBytes } from '../serve/read-body.ts';
import { newId } from '../world.ts';
import { networkAddresses } from './door.ts';

// One test for each threat of docs/security.md, by the same name.

const ids = fakeWorld('threats');
const launch = () => ({ write: newId(ids), base: 0, text: fiveLinesLaunch, putAway: false, invented: false });

/** What the book holds must not have changed by what a test tried. */
async function unchanged(page: Page, work: () => Promise<void>): Promise<void> {
  const before = (await page.ask('/api/status')).json.sequence;
  await work();
  expect((await page.ask('/api/status')).json.sequence).toBe(before);
}

test('only this computer is listened to, unless the network was asked for', () =>
  withStation(async ({ station }) => {
    const { port } = new URL(station.address);
    for (const address of networkAddresses(networkInterfaces())) {
      await expect(ask(`http://${address}:${port}/`)).rejects.toThrow(/ECONNREFUSED/u);
    }
    expect(station.lan).toBeNull();
  }));

test('a foreign name that was made to point here is not answered (DNS rebinding)', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { port } = new URL(station.address);
    for (const host of [
      `rebound.example:${port}`,
      'rebound.example',
      '127.0.0.1',
      `127.0.0.1.:${port}`,
      `127.0.0.1:${Number(port) + 1}`,
    ]) {
      const foreign = await ask(station.address, { headers: { host } });
      expect(foreign.status).toBe(403);
      expect(foreign.headers['set-cookie']).toBeUndefined();
      // who opened the address in a browser is told in a page
      const opened = await ask(station.address, { headers: { host, accept: 'text/html,*/*;q=0.8' } });
      expect([opened.status, opened.headers['set-cookie']]).toEqual([403, undefined]);
      expect(opened.text).toContain('<p>the station does not go by this name. Open the address that');
      const api = await page.ask('/api/launches', { headers: { host, origin: `http://${host}` } });
      expect(api.status).toBe(403);
    }
    expect(
      (
        await page.ask('/api/launches', {
          headers: { host: `localhost:${port}`, origin: `http://localhost:${port}` },
        })
      ).status,
    ).toBe(200);
  }));

test('a foreign page can change nothing and read nothing (cross-site requests)', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { host } = new URL(station.address);
    await unchanged(page, async () => {
      for (const [name, { method, path }] of Object.entries(routes)) {
        const address = path.replace(':version', '1').replace(':id', newId(ids));
        const asking = { method, ...(method === 'GET' ? {} : { body: launch() }) };
        // the cookie is sent here although a browser would not: each wall has to hold by itself
        const foreign = { origin: 'https://foreign.example', 'sec-fetch-site': 'cross-site' };
        expect([name, (await page.ask(address, { ...asking, headers: foreign })).status]).toEqual([
          name,
          403,
        ]);
        const neighbour = { origin: 'http://127.0.0.1:1', 'sec-fetch-site': 'same-site' };
        expect([name, (await page.ask(address, { ...asking, headers: neighbour })).status]).toEqual([
          name,
          403,
        ]);
        const sandboxed = { origin: 'null' };
        expect([name, (await page.ask(address, { ...asking, headers: sandboxed })).status]).toEqual([
          name,
          403,
        ]);
        if (method === 'GET') continue;
        const silent = await ask(`http://${host}${address}`, {
          ...asking,
          headers: { host, cookie: page.cookie },
        });
        expect([name, silent.status]).toEqual([name, 403]);
      }
    });
    const { headers } = await page.ask('/api/launches');
    expect(Object.keys(headers).filter((name) => name.startsWith('access-control'))).toEqual([]);
  }));

test('a foreign page cannot listen in (cross-site WebSocket)', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const { host, origin } = new URL(station.address);
    const live = `ws://${host}/api/live`;
    const good = { host, origin, cookie: page.cookie };
    const { socket } = await listenTo(live, good);
    socket.close();
    for (const [headers, status] of [
      [{ ...good, origin: 'https://foreign.example' }, '403'],
      [{ host, cookie: page.cookie }, '403'],
      [{ ...good, host: 'rebound.example' }, '403'],
      [{ ...good, 'sec-fetch-site': 'cross-site' }, '403'],
      [{ host, origin }, '401'],
      [{ ...good, cookie: 'coreward=x' }, '401'],
    ] as const) {
      await expect(listenTo(live, headers)).rejects.toThrow(status);
    }
    await expect(listenTo(`ws://${host}/api/launches`, good)).rejects.toThrow('404');
  }));

test('a program that does not know the cookie is not let in, and the cookie is out of reach of scripts and foreign pages', () =>
  withStation(async ({ station, world }) => {
    const { host, origin } = new URL(station.address);
    const [cookie = ''] = (await ask(station.address)).headers['set-cookie'] ?? [];
    expect(cookie).toMatch(/^coreward-\d+=[\w-]{43}; Path=\/; HttpOnly; SameSite=Strict$/u);
    for (const wrong of [
      '',
      'coreward=1',
      `${cookie.split('=')[0]}=${'A'.repeat(43)}`,
      `${cookie.split('=')[0]}=`,
    ]) {
      world.wait(60_000); // or all of it would be too often
      for (const [name, { method, path }] of Object.entries(routes)) {
        const address = path.replace(':version', '1').replace(':id', newId(ids));
        const reply = await ask(`${origin}${address}`, {
          method,
          headers: { host, origin, cookie: wrong },
          ...(method === 'GET' ? {} : { body: {} }),
        });
        // pairing is the one question a stranger may ask, and here not even that is answered
        expect([name, reply.status]).toEqual([name, name === 'pair' ? 400 : 401]);
      }
    }
  }));

test('no address leads out of the folder of the screens (directory traversal)', () =>
  inFolder((folder) => {
    mkdirSync(join(folder, 'screens', 'assets'), { recursive: true });
    writeFileSync(join(folder, 'screens', 'index.html'), '<html><head></head></html>');
    writeFileSync(join(folder, 'secret.txt'), 'the secret');
    return withStation(
      async ({ station }) => {
        for (const path of [
          '../secret.txt',
          'assets/../../secret.txt',
          '..%2fsecret.txt',
          '%2e%2e/secret.txt',
          '..%5csecret.txt',
          '....//secret.txt',
          'assets/%00../../secret.txt',
          '/etc/passwd',
          `${join(folder, 'secret.txt')}`,
        ]) {
          const { status, text } = await ask(`${station.address}${path}`);
          expect(text).not.toContain('the secret');
          expect(text).not.toContain('root:');
          expect([200, 404]).toContain(status);
        }
      },
      { screens: join(folder, 'screens') },
    );
  }));

test('the camera is for the station’s own pages, and microphone, place and ports for none', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    for (const reply of [await ask(station.address), await page.ask('/api/status')]) {
      const allowed = String(reply.headers['permissions-policy']).split(', ');
      // Permissions Policy (W3C), from memory: (self) is the page’s own origin, () is nobody
      expect(allowed).toContain('camera=(self)');
      expect(allowed.filter((one) => !one.endsWith('=()'))).toEqual(['camera=(self)']);
      for (const other of ['microphone', 'geolocation', 'usb']) expect(allowed).toContain(`${other}=()`);
    }
  }));

test('a script that got into a page could neither run nor send anything away (page policy)', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    for (const reply of [
      await ask(station.address),
      await page.ask('/api/status'),
      await page.ask('/api/nothing'),
    ]) {
      const policy = String(reply.headers['content-security-policy']);
      expect(policy).toContain("default-src 'none'");
      expect(policy).toContain("script-src 'self';");
      expect(policy).toContain("connect-src 'self';");
      expect(policy).toContain("frame-ancestors 'none'");
      expect(policy).toContain("base-uri 'none'");
      expect(policy).not.toMatch(/unsafe|\*|https?:/u);
      expect(reply.headers['x-content-type-options']).toBe('nosniff');
      expect(reply.headers['referrer-policy']).toBe('no-referrer');
      expect(reply.headers['cross-origin-opener-policy']).toBe('same-origin');
      expect(reply.headers['cross-origin-resource-policy']).toBe('same-origin');
    }
  }));

test('the mark for a page’s own style sheet is another one each time, and stands in the page', () =>
  inFolder((folder) => {
    writeFileSync(join(folder, 'index.html'), '<!doctype html><html><head><title>C</title></head></html>');
    return withStation(
      async ({ station }) => {
        const marks = [];
        for (let times = 0; times < 2; times += 1) {
          const { headers, text } = await ask(station.address);
          const mark = /'nonce-([\w-]{22})'/u.exec(String(headers['content-security-policy']))?.[1];
          expect(text).toContain(`<meta property="csp-nonce" nonce="${mark}" content="${mark}">`);
          marks.push(mark);
        }
        expect(marks[0]).not.toBe(marks[1]);
      },
      { screens: folder },
    );
  }));

test('too much at once is not taken, and is not waited for', () =>
  withStation(async ({ station, faults }) => {
    const page = await openPage(station);
    await unchanged(page, async () => {
      const path = `/api/launches/${newId(ids)}`;
      const long = { ...launch(), text: 'x'.repeat(256 * 1024 + 1) };
      expect((await page.ask(path, { method: 'PUT', body: long })).status).toBe(400);
      const json = { 'content-type': 'application/json' };
      const said = await page
        .ask(path, { method: 'PUT', raw: Buffer.alloc(mostBytes + 1, 0x20), headers: json })
        .catch(() => null);
      if (said !== null) expect(said.status).toBe(413); // or the connection is cut before the end
      const unsaid = await page
        .ask(path, {
          method: 'PUT',
          raw: Buffer.alloc(mostBytes + 1_000_000, 0x20),
          headers: { ...json, 'transfer-encoding': 'chunked' },
        })
        .catch(() => null);
      if (unsaid !== null) expect(unsaid.status).toBe(413);
      const header = await page.ask('/api/status', { headers: { 'x-long': 'x'.repeat(40_000) } });
      expect(header.status).toBe(431);
    });
    expect(faults).toEqual([]);
  }));

test('deeply nested JSON is refused, and the station goes on', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const nested = `{"write":"${newId(ids)}","kind":"note","launch":null,"data":${'['.repeat(50_000)}${']'.repeat(50_000)}}`;
    const json = { 'content-type': 'application/json' };
    const { status } = await page.ask('/api/entries', { method: 'POST', raw: nested, headers: json });
    expect(status).toBe(400);
    expect((await page.ask('/api/status')).status).toBe(200);
    const flat = { write: newId(ids), kind: 'note', launch: null, data: `"${'['.repeat(100)}\\"` };
    expect((await page.ask('/api/entries', { method: 'POST', body: flat })).json.data).toBe(flat.data);
  }));

test('too often is refused for a while, for strangers long before friends', () =>
  withStation(async ({ station, world }) => {
    const page = await openPage(station);
    const { host, origin } = new URL(station.address);
    const stranger = () => ask(`${origin}/api/status`, { headers: { host, origin } });
    let refused = 0;
    for (let times = 0; times < 130; times += 1) if ((await stranger()).status === 429) refused += 1;
    expect(refused).toBeGreaterThan(0);
    expect((await page.ask('/api/status')).status).toBe(200);
    world.wait(10_000);
    expect((await stranger()).status).toBe(401);
  }));

test('a page that talks on the live channel is shut out of it', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const one = await page.listen();
    one.socket.send('hello');
    expect(await one.closed).toBe(4400);
    const two = await page.listen();
    two.socket.send('x'.repeat(2000));
    expect(await two.closed).toBe(1009);
    expect((await page.ask('/api/status')).status).toBe(200);
  }));

test('half a request, or one that is none, does no harm', () =>
  withStation(async ({ station, faults }) => {
    const page = await openPage(station);
    const port = Number(new URL(station.address).port);
    for (const bytes of [
      '\u0000\u0001',
      'GET / HTTP/1.1\r\nHost: a\r\nHost: b\r\n\r\n',
      'PUT /api/settings HTTP/1.1\r\nContent-Length: 5\r\nTransfer-Encoding: chunked\r\n\r\n',
      'GET /api/live HTTP/1.1\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n',
      'OPTIONS * HTTP/1.1\r\nHost: x\r\n\r\n',
      'GET // HTTP/1.1\r\nHost: x\r\nUpgrade: websocket\r\nConnection: Upgrade\r\n\r\n',
    ]) {
      await new Promise<void>((resolve) => {
        const socket = connect(port, '127.0.0.1', () => socket.end(bytes));
        socket.on('data', () => {});
        socket.on('error', () => {});
        socket.on('close', () => resolve());
      });
    }
    expect((await page.ask('/api/status')).status).toBe(200);
    expect(faults).toEqual([]);
  }));

test('what the station keeps is for its owner’s eyes only', () =>
  withStation(
    async ({ folder }) => {
      for (const path of [
        '.',
        'bench-book.sqlite',
        'bench-book.sqlite-wal',
        'certificate-key.pem',
        'certificate.pem',
        'station-address',
      ]) {
        expect([path, statSync(join(folder, path)).mode & 0o077]).toEqual([path, 0]);
      }
    },
    { lan: true },
  ));
