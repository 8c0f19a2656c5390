import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** The command line as a checkout builds it. */
const commandLine = 'packages/cli/bin/coreward.js';

/** The real station, on a temporary folder and a free port. */
export interface StationUnderTest {
  readonly address: string;
  /** Where other machines come in, over TLS, if it was started with `--lan`. */
  readonly networkPort: number;
  readonly folder: string;
  /** Ends it as a power cut would: SIGKILL. */
  readonly kill: () => Promise<void>;
  /** Starts it anew on the same folder and port. */
  readonly start: () => Promise<void>;
  /** Ends it and takes its folder away. */
  readonly clear: () => Promise<void>;
}

/** @param also further options of the command line, such as `--lan` */
export async function startStation(also: readonly string[] = []): Promise<StationUnderTest> {
  const folder = mkdtempSync(join(tmpdir(), 'coreward-screens-'));
  const port = await freePort();
  let child: ChildProcess | null = null;
  const start = async (): Promise<void> => {
    child = await started(folder, port, also);
  };
  const kill = async (): Promise<void> => {
    const own = child;
    child = null;
    if (own === null || own.exitCode !== null) return;
    const ended = new Promise((resolve) => own.once('exit', resolve));
    own.kill('SIGKILL');
    await ended;
  };
  await start();
  return {
    address: `http://127.0.0.1:${port}`,
    networkPort: port + 1,
    folder,
    kill,
    start,
    clear: async () => {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function started(folder: string, port: number, also: readonly string[]): Promise<ChildProcess> {
  const child = spawn(
    process.execPath,
    [commandLine, 'station', '--no-open', '--data', folder, '--port', `${port}`, ...otherScreens(), ...also],
    {
      stdio: ['ignore', 'pipe', 'pipe'],
    },
  );
  return new Promise((resolve, reject) => {
    let said = '';
    const hear = (data: Buffer): void => {
      said += data.toString();
      if (said.includes('Coreward is at')) resolve(child);
    };
    child.stdout.on('data', hear);
    child.stderr.on('data', hear);
    child.once('exit', (code) => reject(new Error(`the station ended with ${code}: ${said}`)));
  });
}

/** Screens that were built elsewhere, to be tried without touching those of the checkout. */
function otherScreens(): readonly string[] {
  const folder = process.env.COREWARD_WEB;
  return folder === undefined ? [] : ['--web', folder];
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const server = createServer();
    server.once('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() =>
        typeof address === 'object' && address !== null
          ? resolve(address.port)
          : reject(new Error('no port')),
      );
    });
  });
}
