import { readFileSync } from 'node:fs';
import { networkInterfaces } from 'node:os';
import { join } from 'node:path';
import { connect as connectTls } from 'node:tls';
import { fiveLinesLaunch } from '@coreward/bench';
import { devicesAnswer, pairingAnswer, routes } from '@coreward/contract';
import { expect, test } from 'vitest';
import { BenchBook } from '../bench-book/bench-book.ts';
import {
  type Asking,
  ask,
  listenTo,
  openPage,
  type Reply,
  type RunningStation,
  withStation,
} from '../fake-page.ts';
import { fakeWorld } from '../fake-world.ts';
import type { Station } from '../station.ts';
import { newId } from '../world.ts';
import { certificateIn } from './certificate.ts';
import { hostsOf } from './door.ts';

// The threats of docs/security.md that come by the network door, by the same names. The tests reach it over loopback,
// which is no privilege at that door.

const ids = fakeWorld('network');

/** Another machine, with or without a cookie of its own. */
function machine(station: Station, cookie = '') {
  const port = station.lan?.port ?? 0;
  const [host = ''] = hostsOf({ kind: 'network', port }, networkInterfaces());
  const own = { host, origin: `https://${host}`, 'sec-fetch-site': 'same-origin', cookie };
  return {
    own,
    ask: (path: string, asking: Asking = {}): Promise<Reply> =>
      ask(`https://127.0.0.1:${port}${path}`, { ...asking, headers: { ...own, ...asking.headers } }),
    listen: () => listenTo(`wss://127.0.0.1:${port}/api/live`, own),
    pair: (code: string, name = 'phone') =>
      machine(station, cookie).ask('/api/pair', { method: 'POST', body: { code, name } }),
  };
}

/** Pairs a machine as its owner would. */
async function paired(station: Station, name = 'phone') {
  const { code = '' } = station.lan?.openPairing() ?? {};
  const reply = await machine(station).pair(code, name);
  const [cookie = ''] = reply.headers['set-cookie'] ?? [];
  return { reply, cookie, id: reply.json.id, ...machine(station, cookie.split(';', 1)[0]) };
}

const withLan = (work: (running: RunningStation) => Promise<void>) => withStation(work, { lan: true });

test('without pairing nothing is read and nothing is written from another machine', () =>
  withLan(async ({ station, world }) => {
    const page = await openPage(station);
    const before = (await page.ask('/api/status')).json.sequence;
    const [{ name: launchName }] = (await page.ask('/api/launches')).json.launches;
    // not even the cookie of this computer's own page is worth anything at the other door
    for (const cookie of [
      '',
      page.cookie,
      page.cookie.replace('coreward', '__Host-coreward'),
      page.cookie.replace(/^coreward-\d+/u, `__Host-coreward-${station.lan?.port}`),
    ]) {
      const stranger = machine(station, cookie);
      world.wait(60_000); // or all of it would be too often
      for (const [name, { method, path }] of Object.entries(routes)) {
        if (name === 'pair') continue;
        const address = path.replace(':version', '1').replace(':id', newId(ids));
        const body = { write: newId(ids), base: 0, text: fiveLinesLaunch, putAway: false, invented: false };
        const reply = await stranger.ask(address, method === 'GET' ? {} : { method, body });
        expect([name, reply.status]).toEqual([name, 401]);
        expect(reply.text).not.toContain(launchName);
      }
      await expect(stranger.listen()).rejects.toThrow('401');
      const first = await stranger.ask('/');
      expect(first.status).toBe(200); // the empty page, which asks for the code
      expect(first.headers['set-cookie']).toBeUndefined();
    }
    expect((await page.ask('/api/status')).json.sequence).toBe(before);
  }));

test('the network is spoken to over TLS only', () =>
  withLan(async ({ station }) => {
    const port = station.lan?.port ?? 0;
    // what to write instead is all that plain HTTP hears
    expect((await ask(`http://127.0.0.1:${port}/`)).status).toBe(400);
    const old = new Promise((resolve, reject) => {
      const socket = connectTls(
        { host: '127.0.0.1', port, rejectUnauthorized: false, maxVersion: 'TLSv1.1', minVersion: 'TLSv1' },
        () => resolve('spoken'),
      );
      socket.on('error', reject);
    });
    await expect(old).rejects.toThrow();
  }));

test('a paired machine reads and writes; its cookie is for TLS, this host and no script', () =>
  withLan(async ({ station }) => {
    const phone = await paired(station);
    expect(phone.reply.status).toBe(200);
    expect(phone.cookie).toMatch(
      new RegExp(
        `^__Host-coreward-${station.lan?.port}=[\\w-]{43}; Path=/; HttpOnly; SameSite=Strict; Secure; Max-Age=\\d+$`,
        'u',
      ),
    );
    expect((await phone.ask('/api/status')).json).toMatchObject({ you: 'paired', lan: true });
    const body = { write: newId(ids), base: 0, text: fiveLinesLaunch, putAway: false, invented: false };
    expect((await phone.ask(`/api/launches/${newId(ids)}`, { method: 'PUT', body })).status).toBe(200);
    const { socket } = await phone.listen();
    socket.close();
  }));

test('a code works once', () =>
  withLan(async ({ station }) => {
    const { code = '' } = station.lan?.openPairing() ?? {};
    expect((await machine(station).pair(code)).status).toBe(200);
    expect((await machine(station).pair(code)).status).toBe(403);
  }));

test('a code works for five minutes', () =>
  withLan(async ({ station, world }) => {
    const { code = '' } = station.lan?.openPairing() ?? {};
    world.wait(5 * 60_000);
    expect((await machine(station).pair(code)).status).toBe(403);
    const { code: fresh = '' } = station.lan?.openPairing() ?? {};
    world.wait(5 * 60_000 - 1);
    expect((await machine(station).pair(fresh)).status).toBe(200);
  }));

test('a clock that is set back does not make a code last longer', () =>
  withLan(async ({ station, world }) => {
    const { code = '' } = station.lan?.openPairing() ?? {};
    world.wait(-60_000);
    expect((await machine(station).pair(code)).status).toBe(403);
    const { code: fresh = '' } = station.lan?.openPairing() ?? {};
    expect((await machine(station).pair(fresh)).status).toBe(200);
  }));

test('five wrong tries burn a code', () =>
  withLan(async ({ station }) => {
    const { code = '' } = station.lan?.openPairing() ?? {};
    const wrong = code === 'AAAAAAAA' ? 'BBBBBBBB' : 'AAAAAAAA';
    for (let tries = 0; tries < 5; tries += 1) expect((await machine(station).pair(wrong)).status).toBe(403);
    expect((await machine(station).pair(code)).status).toBe(403);
    const { code: fresh = '' } = station.lan?.openPairing() ?? {};
    for (let tries = 0; tries < 4; tries += 1) await machine(station).pair(wrong);
    expect((await machine(station).pair(fresh)).status).toBe(200);
  }));

test('a fresh code burns the one before', () =>
  withLan(async ({ station }) => {
    const page = await openPage(station);
    const { code: first = '' } = station.lan?.openPairing() ?? {};
    const fresh = pairingAnswer.parse((await page.ask('/api/pairing', { method: 'POST' })).json);
    expect(fresh.picture).toMatch(/^<svg/u);
    for (const address of fresh.addresses)
      expect(address).toMatch(new RegExp(`^https://.*/pair#${fresh.code}$`, 'u'));
    expect((await machine(station).pair(first)).status).toBe(403);
    expect((await machine(station).pair(fresh.code)).status).toBe(200);
  }));

test('no code is out until somebody asks for one, and none without --lan', async () => {
  await withLan(async ({ station }) => {
    expect((await machine(station).pair('AAAAAAAA')).status).toBe(403);
  });
  await withStation(async ({ station }) => {
    const page = await openPage(station);
    expect((await page.ask('/api/pairing', { method: 'POST' })).status).toBe(422);
  });
});

test('a revoked machine is out at once, also from the live channel', () =>
  withLan(async ({ station }) => {
    const page = await openPage(station);
    const phone = await paired(station, 'phone beside the mount');
    const live = await phone.listen();
    const listed = devicesAnswer.parse((await page.ask('/api/devices')).json);
    expect(listed).toMatchObject({ devices: [{ id: phone.id, name: 'phone beside the mount' }], you: null });
    const left = await page.ask(`/api/devices/${phone.id}`, { method: 'DELETE' });
    expect(left.json.devices).toEqual([]);
    expect((await phone.ask('/api/status')).status).toBe(401);
    expect(await live.closed).toBe(4401);
  }));

test('a machine that is revoked in a shell beside the station is out at once, and from the live channel within a beat', () =>
  withStation(
    async ({ station, folder, world }) => {
      const phone = await paired(station);
      const live = await phone.listen();
      const beside = new BenchBook(folder, world, { shared: true });
      expect(beside.revokeDevice(phone.id)).toBe(true);
      beside.close();
      expect((await phone.ask('/api/status')).status).toBe(401);
      expect(await live.closed).toBe(4401);
    },
    { lan: true, beat: 50 },
  ));

test('a paired machine lets nobody else in or out, and may go by itself', () =>
  withLan(async ({ station }) => {
    const [phone, tablet] = [await paired(station, 'phone'), await paired(station, 'tablet')];
    expect((await phone.ask('/api/pairing', { method: 'POST' })).status).toBe(403);
    expect((await phone.ask(`/api/devices/${tablet.id}`, { method: 'DELETE' })).status).toBe(403);
    expect((await phone.ask(`/api/devices/${phone.id}`, { method: 'DELETE' })).status).toBe(200);
    expect((await tablet.ask('/api/status')).status).toBe(200);
  }));

test('pairing lasts through a restart, and the secret is not in the book', () =>
  withLan(async ({ station, restart, folder }) => {
    const phone = await paired(station);
    const secret = phone.cookie.split(/[=;]/u)[1] ?? '';
    const again = await restart();
    const cookie = phone.cookie.split(';', 1)[0]?.replace(/\d+=/u, `${again.lan?.port}=`);
    expect((await machine(again, cookie).ask('/api/status')).json).toMatchObject({ you: 'paired' });
    const bytes = readFileSync(join(folder, 'bench-book.sqlite'));
    expect(bytes.includes(secret)).toBe(false);
    expect(bytes.includes(Buffer.from(secret, 'base64url'))).toBe(false);
  }));

test('a foreign name or page gets nothing by the network door either', () =>
  withLan(async ({ station }) => {
    const phone = await paired(station);
    for (const headers of [
      { host: 'rebound.example' },
      { origin: 'https://foreign.example' },
      { 'sec-fetch-site': 'cross-site' },
      { origin: phone.own.origin.replace('https', 'http') },
    ]) {
      expect((await phone.ask('/api/launches', { headers })).status).toBe(403);
    }
  }));

test('no secret is ever printed, not even when something breaks', () =>
  withLan(async ({ station, faults }) => {
    const phone = await paired(station);
    const secret = phone.cookie.split(/[=;]/u)[1] ?? 'none';
    const page = await openPage(station);
    const told = [
      await phone.ask('/api/devices'),
      await phone.ask('/api/export'),
      await phone.ask('/api/nothing'),
      await page.ask('/api/export'),
      await phone.ask('/api/pair', { method: 'POST', body: { code: 'wrong', name: secret } }),
    ];
    for (const { text } of told) {
      expect(text).not.toContain(secret);
      expect(text).not.toContain(page.cookie.split('=')[1]);
    }
    expect(faults).toEqual([]);
  }));

test('the certificate is made once, for its own addresses, and anew before it runs out', () =>
  withLan(async ({ station, folder, world }) => {
    const kept = await certificateIn(folder, [], world.now());
    expect(kept.fingerprint).toBe(station.lan?.fingerprint);
    const later = await certificateIn(
      folder,
      ['192.0.2.7'],
      new Date(world.now().getTime() + 340 * 86_400_000),
    );
    expect(later.fingerprint).not.toBe(kept.fingerprint);
    const { X509Certificate } = await import('node:crypto');
    const facts = new X509Certificate(later.certificate);
    expect(facts.checkIP('192.0.2.7')).toBe('192.0.2.7');
    expect(facts.ca).toBe(false);
    expect(facts.publicKey.asymmetricKeyDetails?.namedCurve).toBe('prime256v1');
  }));

test('a paired machine opens no port and no address', () =>
  withLan(async ({ station }) => {
    const phone = await paired(station);
    const page = await openPage(station);
    const setups = [
      {
        kind: 'scpi',
        link: { by: 'tcp', host: '127.0.0.1', port: 9 },
        query: 'READ?',
        unit: 'W',
        every: 1000,
      },
      {
        kind: 'serial-line',
        link: { by: 'serial', path: '/dev/ttyUSB9', baudRate: 9600 },
        format: { separator: 'none', decimal: 'point', column: 0, unit: 'W' },
      },
    ];
    for (const setup of setups) {
      const id = newId(ids);
      const path = `/api/instruments/${id}`;
      const body = { name: 'meter', setup, floor: null, saturation: null };
      const on = { method: 'POST', body: { on: true } };
      expect((await phone.ask(path, { method: 'PUT', body })).status).toBe(403);
      expect((await phone.ask('/api/instruments')).json.instruments).toHaveLength(0);
      expect((await page.ask(path, { method: 'PUT', body })).status).toBe(200);
      expect((await phone.ask(`${path}/switch`, on)).status).toBe(403);
      expect((await phone.ask(path, { method: 'PUT', body: { ...body, name: 'mine' } })).status).toBe(403);
      expect((await page.ask(`${path}/switch`, on)).status).toBe(200);
      expect((await phone.ask(`${path}/switch`, { method: 'POST', body: { on: false } })).status).toBe(200);
      expect((await page.ask(path, { method: 'DELETE' })).status).toBe(200);
    }
    const trial = { speaks: 'scpi', link: { by: 'tcp', host: '127.0.0.1', port: 9 } };
    expect((await phone.ask('/api/ports/try', { method: 'POST', body: trial })).status).toBe(403);
    expect((await phone.ask('/api/ports')).status).toBe(403);
    // what opens nothing is everybody's
    const typed = `/api/instruments/${newId(ids)}`;
    const body = { name: 'typed', setup: { kind: 'typed', unit: 'W' }, floor: null, saturation: null };
    expect((await phone.ask(typed, { method: 'PUT', body })).status).toBe(200);
    await phone.ask(`${typed}/switch`, { method: 'POST', body: { on: true } });
    const readings = [{ ago: 0, value: 1e-3, saturated: false }];
    const post = { method: 'POST', body: { write: newId(ids), readings } };
    expect((await phone.ask(`${typed}/readings`, post)).json.readings).toHaveLength(1);
    expect((await phone.ask(`${typed}/readings?buckets=1`)).json.buckets).toMatchObject([
      { count: 1, min: 1e-3, max: 1e-3, gap: false },
    ]);
  }));
