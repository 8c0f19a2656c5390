import { readdir, readlink } from 'node:fs/promises';
import { join } from 'node:path';
import { SerialPort } from 'serialport';

/** A serial port, and what there is to know it by. */
export interface FoundPort {
  readonly path: string;
  readonly label: string;
}

/** The serial ports of this computer, by their paths. */
export async function serialPorts(platform: NodeJS.Platform): Promise<readonly FoundPort[]> {
  if (platform === 'linux') return linuxPorts();
  const found = await SerialPort.list();
  return found.map(({ path, manufacturer }) => ({ path, label: manufacturer ?? path }));
}

/**
 * Read off the folders of the system itself: the package asks a program that small machines do not have, and its failure
 * stops the whole station. On-board ports (`ttyS0` …) are there whether or not anything is behind them, and left out.
 */
async function linuxPorts(): Promise<readonly FoundPort[]> {
  const names = (await filesIn('/dev')).filter((name) => /^tty(USB|ACM|AMA)\d+$/u.test(name));
  const labels = new Map<string, string>();
  for (const name of await filesIn('/dev/serial/by-id')) {
    const target = await readlink(join('/dev/serial/by-id', name)).catch(() => '');
    labels.set(target.split('/').at(-1) ?? '', name);
  }
  return names.sort().map((name) => ({ path: `/dev/${name}`, label: labels.get(name) ?? name }));
}

const filesIn = (folder: string): Promise<readonly string[]> => readdir(folder).catch(() => []);
