import {
  type AnswerOf,
  addressOf,
  type ParametersOf,
  type QueryOf,
  type RefusedAnswer,
  type RequestOf,
  type Route,
  refusedAnswer,
} from '@coreward/contract';
import type { World } from './world.ts';

/** The station answered, and did not do it. */
export class NotDone extends Error {
  readonly answer: RefusedAnswer;

  constructor(answer: RefusedAnswer) {
    super(answer.refused.map(({ what, mend }) => `${what}. ${mend}`).join('\n') || answer.code);
    this.name = 'NotDone';
    this.answer = answer;
  }
}

/** The station did not answer, or something else did: whether it was done is not known. */
export class NoAnswer extends Error {
  constructor() {
    super('the station did not answer');
    this.name = 'NoAnswer';
  }
}

/** How long an answer may take, ms. */
const patience = 10_000;

/**
 * Asks the station one thing.
 *
 * @throws {NotDone} with the station's refusal
 * @throws {NoAnswer} if it cannot be reached
 */
export async function ask<R extends Route>(
  world: Pick<World, 'fetch' | 'after'>,
  route: R,
  parameters: ParametersOf<R>,
  request: RequestOf<R>,
  query: QueryOf<R> | null = null,
): Promise<AnswerOf<R>> {
  const stop = new AbortController();
  const cancel = world.after(patience, () => stop.abort());
  let status: number;
  let body: unknown;
  try {
    const answer = await world.fetch(
      addressOf(route, parameters, (query ?? {}) as { readonly [key: string]: string | undefined }),
      {
        method: route.method,
        signal: stop.signal,
        credentials: 'same-origin',
        ...(request === null
          ? {}
          : { headers: { 'content-type': 'application/json' }, body: JSON.stringify(request) }),
      },
    );
    status = answer.status;
    body = await answer.json();
  } catch {
    throw new NoAnswer();
  } finally {
    cancel();
  }
  if (status >= 200 && status < 300) {
    const read = route.answer.safeParse(body);
    if (read.success) return read.data as AnswerOf<R>;
    throw new NoAnswer();
  }
  const refused = refusedAnswer.safeParse(body);
  if (refused.success) throw new NotDone(refused.data);
  throw new NoAnswer();
}
