import { Declined } from '../declined.ts';

/** Bytes that may be sent at once: a document of the greatest length, all of it in escapes of JSON, and some more. */
export const mostBytes = 2 * 1024 * 1024;

/**
 * The JSON that was sent.
 *
 * @throws {Declined} if it is longer than `mostBytes`, which is noticed before it is kept, or no JSON
 */
export async function bodyOf(request: Request): Promise<unknown> {
  if (!/^application\/json(;|$)/iu.test(request.headers.get('content-type') ?? '')) {
    throw malformed('what was sent is not said to be JSON', 'Send it as `application/json`.');
  }
  if (Number(request.headers.get('content-length') ?? 0) > mostBytes) throw tooLong();
  const chunks: Uint8Array[] = [];
  let length = 0;
  for await (const chunk of request.body ?? []) {
    length += chunk.length;
    if (length > mostBytes) throw tooLong();
    chunks.push(chunk);
  }
  try {
    return JSON.parse(new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks)));
  } catch {
    throw malformed('what was sent is not JSON in UTF-8', 'Send it again.');
  }
}

const tooLong = (): Declined =>
  new Declined('too long', {
    where: 'body',
    what: `more than ${mostBytes} bytes were sent at once`,
    mend: 'Send less at once.',
  });

const malformed = (what: string, mend: string): Declined =>
  new Declined('malformed', { where: 'body', what, mend });
