import { connect, type Socket } from 'node:net';
import { expect, test } from 'vitest';
import { ask, withStation } from '../fake-page.ts';

/** What comes back on a bare connection, to its end. */
function said(port: number, speak: (socket: Socket) => void): Promise<string> {
  return new Promise((resolve, reject) => {
    const socket = connect(port, '127.0.0.1', () => speak(socket));
    let heard = '';
    socket.setEncoding('latin1').on('data', (piece: string) => {
      heard += piece;
    });
    socket.on('close', () => resolve(heard));
    socket.on('error', reject);
  });
}

test('who comes to the network door with plain HTTP is told to write https, and nothing else', () =>
  withStation(
    async ({ station }) => {
      const port = station.lan?.port ?? 0;
      const heard = await said(port, (socket) =>
        socket.write(`GET /api/launches HTTP/1.1\r\nHost: 127.0.0.1:${port}\r\n\r\n`),
      );
      // a status line, fields and a body of the length they tell (RFC 9112, from memory)
      const [head = '', body = ''] = heard.split('\r\n\r\n');
      expect(head).toMatch(/^HTTP\/1\.1 400 Bad Request\r\n/u);
      expect(head).toContain(`Content-Length: ${body.length}`);
      expect(body).toContain('https://');
      expect(head).not.toMatch(/set-cookie/iu);
      // much that follows does not keep the answer from being read
      const long = await said(port, (socket) => socket.write(`POST / HTTP/1.1\r\n${'x'.repeat(1_000_000)}`));
      expect(long).toContain('https://');
      // and the door still speaks TLS, also where its first byte comes alone
      expect((await ask(`https://127.0.0.1:${port}/`)).status).not.toBe(400);
    },
    { lan: true },
  ));

test(
  'who says nothing, or hangs up, is forgotten',
  () =>
    withStation(
      async ({ station }) => {
        const port = station.lan?.port ?? 0;
        expect(await said(port, (socket) => socket.end())).toBe('');
        const begun = performance.now();
        expect(await said(port, () => {})).toBe('');
        // five seconds of silence; a busy machine may be later
        expect(performance.now() - begun).toBeGreaterThan(4_000);
      },
      { lan: true },
    ),
  20_000,
);
