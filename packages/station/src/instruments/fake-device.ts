import { type ChildProcess, spawn } from 'node:child_process';
import { createServer, type Socket } from 'node:net';

/** A meter in the network that answers queries as a device by the standards does. */
export interface FakeMeter {
  readonly port: number;
  /** Every query it was asked. */
  readonly asked: readonly string[];
  /** Hangs up on everybody and is not there any longer. */
  readonly unplug: () => Promise<void>;
}

/** @param answerTo what it says to a query; null: nothing */
export function fakeMeter(answerTo: (query: string) => string | null, port = 0): Promise<FakeMeter> {
  const asked: string[] = [];
  const sockets = new Set<Socket>();
  const server = createServer((socket) => {
    sockets.add(socket);
    socket.on('error', () => socket.destroy());
    let rest = '';
    socket.setEncoding('utf8').on('data', (text) => {
      const lines = (rest + text).split('\n');
      rest = lines.pop() ?? '';
      for (const query of lines) {
        asked.push(query);
        const answer = answerTo(query);
        if (answer !== null) socket.write(answer);
      }
    });
  });
  return new Promise((resolve) => {
    server.listen(port, '127.0.0.1', () => {
      const address = server.address();
      resolve({
        port: typeof address === 'object' ? (address?.port ?? 0) : 0,
        asked,
        unplug: () =>
          new Promise((done) => {
            for (const socket of sockets) socket.destroy();
            server.close(() => done());
          }),
      });
    });
  });
}

/** A serial device: a pair of pseudo-terminals that `socat` joins. */
export interface FakeSerial {
  /** What it says. */
  readonly say: (text: string | Buffer) => void;
  readonly unplug: () => Promise<void>;
}

/**
 * @param path where its port is found, for as long as it is plugged in
 * @param answerTo what it says to a query; null, or left out: nothing
 */
export async function fakeSerial(
  path: string,
  answerTo: (query: string) => string | null = () => null,
): Promise<FakeSerial> {
  const device: ChildProcess = spawn('socat', ['-d', '-d', `pty,raw,echo=0,link=${path}`, 'stdio'], {
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let rest = '';
  device.stdout?.setEncoding('utf8').on('data', (text) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    for (const query of lines) {
      const answer = answerTo(query);
      if (answer !== null) device.stdin?.write(answer);
    }
  });
  await new Promise<void>((ready, failed) => {
    device.once('error', failed); // no socat: `npm run setup:browser` installs it
    device.stderr?.on('data', (text) => String(text).includes('starting data transfer loop') && ready());
  });
  device.stdin?.on('error', () => {});
  return {
    say: (text) => void device.stdin?.write(text),
    unplug: () =>
      new Promise((gone) => {
        device.once('exit', () => gone());
        device.kill();
      }),
  };
}
