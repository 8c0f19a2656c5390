import { join } from 'node:path';
import { expect, test } from 'vitest';
import { inFolder } from '../fake-world.ts';
import type { LinkTrouble } from './connection.ts';
import { fakeSerial } from './fake-device.ts';
import { serialConnection } from './serial-connection.ts';

/** More than a pseudo-terminal holds: a read is under way at every moment. */
const flood = Buffer.alloc(200_000, '1.5 W\r\n');

test('a device that is pulled out in the middle of a word is missed at once', () =>
  inFolder(async (folder) => {
    const path = join(folder, 'tty');
    const device = await fakeSerial(path);
    const pouring = setInterval(() => device.say(flood), 1);
    let heard = 0;
    const dropped = new Promise<LinkTrouble>((tell) => {
      serialConnection(
        { by: 'serial', path, baudRate: 115_200 },
        { opened: () => {}, said: () => (heard += 1), dropped: tell },
      );
    });
    await new Promise((done) => setTimeout(done, 300));
    clearInterval(pouring);
    await device.unplug();
    const { parts, hand } = await dropped;
    expect(heard).toBeGreaterThan(0);
    expect(parts).toEqual({
      where: path,
      what: 'the device is gone',
      mend: 'Plug it in again; it is opened by itself.',
    });
    expect(hand).toBe(false);
  }));
