import { type Change, keyOf, type Thing } from './change.ts';

/** What can be undone and redone on this page, newest last. */
export interface History {
  readonly done: readonly Change[];
  readonly undone: readonly Change[];
}

export const noHistory: History = { done: [], undone: [] };

/** As many steps back as anybody walks. */
const mostSteps = 200;

/** A new change: what was undone before cannot be redone over it. */
export function withChange({ done }: History, change: Change): History {
  return { done: [...done, change].slice(-mostSteps), undone: [] };
}

export function stepBack({ done, undone }: History): History {
  const last = done.at(-1);
  return last === undefined ? { done, undone } : { done: done.slice(0, -1), undone: [...undone, last] };
}

export function stepForward({ done, undone }: History): History {
  const last = undone.at(-1);
  return last === undefined ? { done, undone } : { done: [...done, last], undone: undone.slice(0, -1) };
}

/** Without the steps of a thing that somebody else has changed: going back would overwrite them unseen. */
export function without({ done, undone }: History, thing: Thing): History {
  const others = (change: Change): boolean => keyOf(change.thing) !== keyOf(thing);
  return { done: done.filter(others), undone: undone.filter(others) };
}
