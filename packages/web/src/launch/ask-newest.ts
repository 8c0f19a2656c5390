/** Asks one slow answerer, one question at a time: of the questions that come meanwhile only the newest is asked. */
export interface AskNewest<Question> {
  readonly ask: (question: Question) => void;
  /** Nothing is answered any more. */
  readonly stop: () => void;
}

/**
 * @param answer asks the answerer; a question that is overtaken while it is answered is still answered, but not told
 * @param tell hears each answer whose question was the newest when it came
 * @param fail hears that the newest question was refused or failed
 */
export function askNewest<Question, Answer>(
  answer: (question: Question) => Promise<Answer>,
  tell: (question: Question, answer: Answer) => void,
  fail: (question: Question, error: unknown) => void,
): AskNewest<Question> {
  let busy = false;
  let stopped = false;
  let waiting: { readonly question: Question } | null = null;

  async function run(question: Question): Promise<void> {
    busy = true;
    let outcome: () => void;
    try {
      const answered = await answer(question);
      outcome = () => tell(question, answered);
    } catch (error) {
      outcome = () => fail(question, error);
    }
    busy = false;
    if (stopped) return;
    const next = waiting;
    waiting = null;
    if (next === null) outcome();
    else void run(next.question);
  }

  return {
    ask(question) {
      if (busy) waiting = { question };
      else void run(question);
    },
    stop() {
      stopped = true;
      waiting = null;
    },
  };
}
