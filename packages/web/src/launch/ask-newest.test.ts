import { expect, test } from 'vitest';
import { askNewest } from './ask-newest.ts';

/** An answerer that answers when it is told to. */
function slowAnswerer() {
  const open: { readonly question: string; readonly answer: (error?: Error) => Promise<void> }[] = [];
  const told: string[] = [];
  const failed: string[] = [];
  const asker = askNewest(
    (question: string) =>
      new Promise<string>((resolve, reject) => {
        open.push({
          question,
          answer: async (error) => {
            if (error === undefined) resolve(`${question}!`);
            else reject(error);
            // the asker hears of it in the turns that follow
            await Promise.resolve();
            await Promise.resolve();
            await Promise.resolve();
          },
        });
      }),
    (_, answer) => told.push(answer),
    (question) => failed.push(question),
  );
  return { asker, open, told, failed };
}

test('of the questions that come while one is answered only the newest is asked, and only its answer told', async () => {
  const { asker, open, told } = slowAnswerer();
  for (const question of ['a', 'b', 'c']) asker.ask(question);
  expect(open.map(({ question }) => question)).toEqual(['a']);
  await open[0]!.answer();
  expect(open.map(({ question }) => question)).toEqual(['a', 'c']);
  expect(told).toEqual([]);
  await open[1]!.answer();
  expect(told).toEqual(['c!']);
});

test('a refused question is told as such, and the next one is asked', async () => {
  const { asker, open, told, failed } = slowAnswerer();
  asker.ask('a');
  await open[0]!.answer(new Error('no'));
  expect(failed).toEqual(['a']);
  asker.ask('b');
  await open[1]!.answer();
  expect(told).toEqual(['b!']);
});

test('nothing is told once it is stopped', async () => {
  const { asker, open, told } = slowAnswerer();
  asker.ask('a');
  asker.stop();
  await open[0]!.answer();
  expect(told).toEqual([]);
});
