/** What came first of two sources that both wait for the world; `done`: that one has ended. */
export type First<One, Other> =
  | { readonly from: 'one'; readonly done: false; readonly value: One }
  | { readonly from: 'other'; readonly done: false; readonly value: Other }
  | { readonly from: 'one' | 'other'; readonly done: true };

/** Two sources as one, in the order in which things come; nothing of either is lost. It ends with both. */
export async function* whicheverFirst<One, Other>(
  one: AsyncIterator<One>,
  other: AsyncIterator<Other>,
): AsyncGenerator<First<One, Other>, void> {
  const ofOne = async (): Promise<First<One, Other>> => {
    const next = await one.next();
    return next.done === true ? { from: 'one', done: true } : { from: 'one', done: false, value: next.value };
  };
  const ofOther = async (): Promise<First<One, Other>> => {
    const next = await other.next();
    return next.done === true
      ? { from: 'other', done: true }
      : { from: 'other', done: false, value: next.value };
  };
  let waiting: { one: ReturnType<typeof ofOne> | null; other: ReturnType<typeof ofOther> | null } = {
    one: ofOne(),
    other: ofOther(),
  };
  while (waiting.one !== null || waiting.other !== null) {
    const first = await Promise.race([waiting.one, waiting.other].filter((promise) => promise !== null));
    const next = first.from === 'one' ? ofOne : ofOther;
    waiting = { ...waiting, [first.from]: first.done ? null : next() };
    yield first;
  }
}
