import { expect, test } from 'vitest';
import { newestAnswer } from './use-newest.ts';

/** An answer that comes when it is told to. */
function later() {
  let come: (answer: string) => void = () => {};
  let fail: (error: Error) => void = () => {};
  const asking = new Promise<string>((resolve, reject) => {
    come = resolve;
    fail = reject;
  });
  return { asking, come, fail };
}

const settled = () => new Promise((resolve) => setImmediate(resolve));

test('an answer that was overtaken on its way, or failed there, is not heard', async () => {
  const heard: string[] = [];
  const hear = (answer: string): void => void heard.push(answer);
  const newest = newestAnswer();
  const [slow, failing, quick] = [later(), later(), later()];
  for (const { asking } of [slow, failing, quick]) newest.of(asking).then(hear, () => hear('failed'));
  quick.come('quick');
  slow.come('slow');
  failing.fail(new Error('lost'));
  await settled();
  expect(heard).toEqual(['quick']);
});

test('the newest is heard also when it fails, and nothing once it is forgotten', async () => {
  const heard: string[] = [];
  const hear = (answer: string): void => void heard.push(answer);
  const newest = newestAnswer();
  const [failing, late] = [later(), later()];
  newest.of(failing.asking).then(hear, () => hear('failed'));
  failing.fail(new Error('lost'));
  await settled();
  newest.of(late.asking).then(hear, () => hear('failed'));
  newest.forget();
  late.come('late');
  await settled();
  expect(heard).toEqual(['failed']);
});
