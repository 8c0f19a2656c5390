import {
  createServer as createHttp,
  type IncomingMessage,
  type Server,
  type ServerResponse,
} from 'node:http';
import { createServer as createHttps } from 'node:https';
import type { AddressInfo } from 'node:net';
import { networkInterfaces } from 'node:os';
import { Refusal } from '@coreward/bench';
import { getRequestListener } from '@hono/node-server';
import { renderUnicodeCompact } from 'uqr';
import { type Certificate, certificateIn } from './access/certificate.ts';
import { type Door, hostsOf, networkAddresses } from './access/door.ts';
import { Pairing, type PairingCode } from './access/pairing.ts';
import { tellingPlainCallers } from './access/plain-at-tls.ts';
import { BenchBook } from './bench-book/bench-book.ts';
import { giveExample } from './bench-book/first-start.ts';
import { Instruments } from './instruments/instruments.ts';
import { LiveChannel } from './live/live-channel.ts';
import { PracticeBenches } from './practice-benches.ts';
import { pairingAddresses } from './serve/access-handlers.ts';
import { appFor } from './serve/app.ts';
import type { Rooms } from './serve/rooms.ts';
import { screensIn } from './serve/screens.ts';
import type { World } from './world.ts';

/** Where the station listens if nobody says otherwise; other machines come by the next one. */
export const usualPort = 5208;
/** So many ports are tried from the usual one on. */
const portsTried = 20;

/** What a station is begun with. */
export interface StationOptions {
  readonly world: World;
  /** Where the bench book lies. */
  readonly folder: string;
  /** Where the built screens lie. */
  readonly screens: string;
  /** This port or none; null: the usual one or the next that is free. 0: any. */
  readonly port: number | null;
  /** Whether other machines may be paired. */
  readonly lan: boolean;
  /** Of the program. */
  readonly version: string;
  /** Hears of faults of ours. */
  readonly fault: (error: unknown) => void;
  /** How often the pages hear that the station is there, ms; left out: as the contract promises. */
  readonly beat?: number;
}

/** A code, and where to take it. */
export interface LanPairing extends PairingCode {
  /** With the code behind `#`; none while this computer is in no network. */
  readonly addresses: readonly string[];
  /** The first address as a QR code, to be printed in a terminal; empty if there is none. */
  readonly picture: string;
}

/** How other machines get in. */
export interface LanEntrance {
  readonly port: number;
  readonly fingerprint: string;
  /** A fresh code, in place of the one before. */
  readonly openPairing: () => LanPairing;
}

/** A station that is running. */
export interface Station {
  /** `http://127.0.0.1:5208/` */
  readonly address: string;
  readonly lan: LanEntrance | null;
  /**
   * Says good-bye to the pages and closes the book; nothing is lost if it never happens.
   *
   * @returns how many readings of devices the disk did not take
   */
  readonly stop: () => Promise<number>;
}

/**
 * Opens the bench book and both doors.
 *
 * @throws {Refusal} if the book cannot be opened or the port cannot be had
 */
export async function startStation(options: StationOptions): Promise<Station> {
  const { world, folder, lan } = options;
  const book = new BenchBook(folder, world);
  const servers: Server[] = [];
  try {
    if (book.isNew) giveExample(book);
    const certificate = lan
      ? await certificateIn(folder, networkAddresses(networkInterfaces()), world.now())
      : null;
    const here = await listening(createHttp, '127.0.0.1', options.port);
    servers.push(here.server);
    const beyond =
      certificate === null
        ? null
        : await listening(
            tlsWith(certificate),
            '0.0.0.0',
            options.port === null || options.port === 0 ? null : options.port + 1,
            here.port + 1,
          );
    if (beyond !== null) servers.push(beyond.server);
    const network: Door | null = beyond === null ? null : { kind: 'network', port: beyond.port };
    const pairing = new Pairing(world);
    const live = new LiveChannel(book, options.beat);
    const benches = new PracticeBenches(book, (message) => live.tell(message));
    const instruments = new Instruments(
      book,
      (launch, seed) => benches.watch(launch, seed),
      (message) => live.tell(message),
      options.fault,
    );
    const rooms: Rooms = {
      book,
      instruments,
      pairing,
      benches,
      screens: screensIn(options.screens),
      network,
      version: options.version,
      fault: options.fault,
      revoked: () => live.beat(),
    };
    open({ kind: 'here', port: here.port }, here.server, rooms, live);
    if (network !== null && beyond !== null) open(network, beyond.server, rooms, live);
    const address = `http://127.0.0.1:${here.port}/`;
    book.lock?.tell(address);
    return {
      address,
      lan:
        network === null || certificate === null
          ? null
          : {
              port: network.port,
              fingerprint: certificate.fingerprint,
              openPairing: () => {
                const { code, expires } = pairing.open();
                const addresses = pairingAddresses(network, code);
                const picture =
                  addresses[0] === undefined ? '' : renderUnicodeCompact(addresses[0], { border: 2 });
                return { code, expires, addresses, picture };
              },
            },
      stop: async () => {
        live.close();
        await Promise.all(servers.map(shut));
        const unkept = instruments.close();
        book.close();
        return unkept;
      },
    };
  } catch (error) {
    await Promise.all(servers.map(shut));
    book.close();
    throw error;
  }
}

/** Answers at a door what is asked there. */
function open(door: Door, server: Server, rooms: Rooms, live: LiveChannel): void {
  // asked anew each time: a laptop changes networks
  const hosts = () => hostsOf(door, networkInterfaces());
  const app = appFor(door, hosts, rooms);
  const listener = getRequestListener(
    (request, env) => {
      const { incoming } = env as { readonly incoming: IncomingMessage };
      return app.fetch(request, { address: incoming.socket.remoteAddress ?? 'nowhere' });
    },
    { overrideGlobalObjects: false },
  );
  server.on(
    'request',
    (request: IncomingMessage, response: ServerResponse) => void listener(request, response),
  );
  server.on('upgrade', (request, socket, head) => live.welcome(door, hosts(), request, socket, head));
}

const tlsWith =
  ({ certificate, privateKey }: Certificate) =>
  () =>
    tellingPlainCallers(createHttps({ cert: certificate, key: privateKey, minVersion: 'TLSv1.2' }));

interface Listening {
  readonly server: Server;
  readonly port: number;
}

/**
 * A server that listens.
 *
 * @param wanted this port and no other; null: `first` or one of the next
 * @throws {Refusal} if there is none to be had
 */
async function listening(
  make: () => Server,
  host: string,
  wanted: number | null,
  first = usualPort,
): Promise<Listening> {
  const ports = wanted === null ? Array.from({ length: portsTried }, (_, index) => first + index) : [wanted];
  for (const port of ports) {
    const server = make();
    // slow senders are not waited for; connections beyond these are refused by the system
    server.requestTimeout = 30_000;
    server.headersTimeout = 10_000;
    server.maxConnections = 512;
    if (await takes(server, host, port)) return { server, port: (server.address() as AddressInfo).port };
  }
  throw new Refusal({
    where: wanted === null ? 'port' : `port ${wanted}`,
    what:
      wanted === null
        ? `the ports from ${first} to ${first + portsTried - 1} are all in use`
        : 'another program listens there, or you may not',
    mend: 'Name a free one with `--port`, such as `--port 6208`, or leave the choice to Coreward.',
  });
}

function takes(server: Server, host: string, port: number): Promise<boolean> {
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      if (error.code === 'EADDRINUSE' || error.code === 'EACCES') resolve(false);
      else reject(error);
    });
    server.listen({ host, port, exclusive: true }, () => resolve(true));
  });
}

/** Stops listening; what is being answered gets a moment to end. */
function shut(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeIdleConnections();
    setTimeout(() => server.closeAllConnections(), 1000).unref();
  });
}
