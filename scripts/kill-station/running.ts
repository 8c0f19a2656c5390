import { type ChildProcess, spawn } from 'node:child_process';
import { Agent, request } from 'node:http';

/** A station in a process of its own, and one page of it. */
export interface Running {
  readonly child: ChildProcess;
  /** Sends one question as a page would; null if no whole answer came back. */
  readonly ask: (
    method: string,
    path: string,
    body?: object,
  ) => Promise<{ status: number; json: unknown } | null>;
  /** Kills it and waits until it is gone. */
  readonly kill: () => Promise<void>;
}

const kill = (child: ChildProcess): Promise<void> =>
  new Promise((resolve) => {
    if (child.exitCode !== null || child.signalCode !== null) {
      resolve();
      return;
    }
    child.once('close', () => resolve());
    child.kill('SIGKILL');
  });

/** Starts a station on a data folder and lets it be killed while it still begins, `after` so many ms. */
export async function killedAtBirth(main: string, folder: string, after: number): Promise<void> {
  const child = spawn(process.execPath, [main, 'station', '--data', folder, '--no-open'], {
    stdio: 'ignore',
  });
  await new Promise((resolve) => setTimeout(resolve, after));
  await kill(child);
}

/** Starts a station on a data folder and opens its first page. */
export async function running(main: string, folder: string): Promise<Running> {
  const child = spawn(process.execPath, [main, 'station', '--data', folder, '--no-open']);
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    for (const stream of [child.stdout, child.stderr]) {
      stream.setEncoding('utf8').on('data', (text: string) => {
        said += text;
        const found = /Coreward is at (\S+)\n/u.exec(said)?.[1];
        if (found !== undefined) resolve(found);
      });
    }
    child.once('close', () => reject(new Error(`the station did not start: ${said}`)));
  });
  const url = new URL(address);
  const agent = new Agent({ keepAlive: true });
  const send = (method: string, path: string, headers: Record<string, string>, body?: object) =>
    new Promise<{ status: number; cookie: string; json: unknown } | null>((resolve) => {
      const asking = request(
        { host: url.hostname, port: url.port, path, method, headers, agent },
        (response) => {
          let text = '';
          response.setEncoding('utf8').on('data', (chunk: string) => {
            text += chunk;
          });
          response.on('error', () => resolve(null));
          response.on('end', () => {
            const cookie = response.headers['set-cookie']?.[0]?.split(';', 1)[0] ?? '';
            resolve({
              status: response.statusCode ?? 0,
              cookie,
              json: path === '/' ? null : JSON.parse(text),
            });
          });
          response.on('close', () => resolve(null)); // cut off in the middle
        },
      );
      asking.on('error', () => resolve(null));
      asking.end(body === undefined ? undefined : JSON.stringify(body));
    });
  const cookie = (await send('GET', '/', {}))?.cookie ?? '';
  return {
    child,
    ask: (method, path, body) =>
      send(method, path, { cookie, origin: url.origin, 'content-type': 'application/json' }, body),
    kill: async () => {
      await kill(child);
      agent.destroy();
    },
  };
}
