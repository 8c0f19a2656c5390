import { mostDocumentCharacters, mostLogCharacters } from '@coreward/contract';
import { expect, test } from 'vitest';
import { openPage, withStation } from '../fake-page.ts';
import { fakeWorld } from '../fake-world.ts';
import { newId } from '../world.ts';

const ids = fakeWorld('bodies');

/** `text` again and again, and no more characters than there may be. */
const filled = (text: string, most: number): string => text.repeat(Math.floor(most / text.length));

// a line end is two characters of JSON (RFC 8259, 7), a micro sign two bytes of UTF-8 (RFC 3629)
for (const line of ['0.512\n', '1\r\n', '1 µW\r\n']) {
  test(`a log of the greatest length is taken, whatever its lines: ${JSON.stringify(line)}`, () =>
    withStation(async ({ station }) => {
      const page = await openPage(station);
      const setup = { kind: 'replay', log: filled(line, mostLogCharacters), unit: 'W', speed: 1 };
      const body = { name: 'log', setup, floor: null, saturation: null };
      const { status } = await page.ask(`/api/instruments/${newId(ids)}`, { method: 'PUT', body });
      expect(status).toBe(200);
    }));
}

test('a document of the greatest length is read, though all of it stands in escapes of JSON', () =>
  withStation(async ({ station }) => {
    const page = await openPage(station);
    const text = '\u0001'.repeat(mostDocumentCharacters);
    const body = { write: newId(ids), base: 0, text, putAway: false, invented: false };
    const reply = await page.ask(`/api/launches/${newId(ids)}`, { method: 'PUT', body });
    // refused for what it says, not for its length
    expect(reply.status).toBe(422);
    expect(reply.json.refused[0].what).toContain('U+0001');
  }));
