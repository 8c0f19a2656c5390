import { mostDocumentCharacters, mostLogCharacters } from '@coreward/contract';
import { Declined } from '../declined.ts';

/**
 * Bytes that may be sent at once: a document of the greatest length, all of it in escapes of JSON, or a log whose every
 * character takes two, as the ends of its lines and a `µ` do; and some more.
 */
export const mostBytes = Math.max(6 * mostDocumentCharacters, 2 * mostLogCharacters) + 64 * 1024;

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
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(Buffer.concat(chunks));
    if (!isTooDeep(text)) return JSON.parse(text);
  } catch {
    throw malformed('what was sent is not JSON in UTF-8', 'Send it again.');
  }
  throw malformed(`it is nested more than ${mostDeep} levels deep`, 'Send it in a flatter form.');
}

/** Levels of lists and groups; what reads them one within another would run out of room in the end. */
const mostDeep = 64;

/** One look at each character, whatever was sent; a text that is no JSON may count as anything. */
function isTooDeep(json: string): boolean {
  let depth = 0;
  let isInString = false;
  for (let at = 0; at < json.length; at += 1) {
    const character = json[at];
    if (isInString && character === '\\') at += 1;
    else if (character === '"') isInString = !isInString;
    else if (isInString) continue;
    else if (character === '[' || character === '{') depth += 1;
    else if (character === ']' || character === '}') depth -= 1;
    if (depth > mostDeep) return true;
  }
  return false;
}

const tooLong = (): Declined =>
  new Declined('too long', {
    where: 'body',
    what: `more than ${mostBytes} bytes were sent at once`,
    mend: 'Send less at once.',
  });

const malformed = (what: string, mend: string): Declined =>
  new Declined('malformed', { where: 'body', what, mend });
