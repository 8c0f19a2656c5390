import { NotDone } from '../keeping/client.ts';
import { instrumentTexts } from '../texts/instrument.ts';

/** What came of something that was asked of the station: its answer, or why not, in words for the page. */
export type Done<Answer> =
  | { readonly ok: true; readonly answer: Answer }
  | { readonly ok: false; readonly said: string };

export async function done<Answer>(asking: Promise<Answer>): Promise<Done<Answer>> {
  try {
    return { ok: true, answer: await asking };
  } catch (error) {
    return { ok: false, said: error instanceof NotDone ? error.message : instrumentTexts.noAnswer };
  }
}
