import { type BookEntry, entriesInForce } from '../caution/kept-answers.ts';
import type { CardOffset } from './exact-turns.ts';
import type { Cards } from './steer-layout.ts';
import { ordinaryMeter, type SteerMeter } from './steer-meter.ts';
import type { SteerAnswer } from './step.ts';

/** The kind of a steer's entries in the bench book. */
export const steerEntryKind = 'steer';

/** What a steer begins with. */
export interface SteerBegun {
  /** A name for this one steer. */
  readonly session: string;
  readonly cards: Cards;
  /** The version of the launch that stood on the bench; null: it was not kept, and the newest is taken. */
  readonly version: number | null;
  /** What its search counts with. */
  readonly meter: SteerMeter;
  /** The seed of the practice bench; null: a real one. */
  readonly practice: number | null;
}

/** A steer as the bench book holds it: the newest one of a launch. */
export interface KeptSteer extends SteerBegun {
  readonly answers: readonly SteerAnswer[];
  /** The entry of the last answer, which an undo withdraws; null: nothing was answered. */
  readonly lastEntry: string | null;
}

/** Data of the entry that begins a steer. */
export const begunEntry = (begun: SteerBegun) => ({
  text: begun.practice === null ? 'steer begun' : `practice steer begun, seed ${begun.practice}`,
  session: begun.session,
  does: 'begin',
  near: begun.cards.near,
  far: begun.cards.far,
  readingError: begun.cards.readingError,
  version: begun.version,
  meter: { name: begun.meter.name, seen: begun.meter.seen, updateTime: begun.meter.updateTime },
  practice: begun.practice,
});

/** Data of the entry of one answer, counted from 0. */
export const answerEntry = (session: string, number: number, answer: SteerAnswer, text: string) => ({
  text,
  session,
  does: 'answer',
  number,
  // as plain data, which the book can hold
  answer: JSON.stringify(answer),
});

/** The newest steer among the entries of one launch; null: none was begun. */
export function steerThatStands(entries: readonly BookEntry[]): KeptSteer | null {
  const all = entriesInForce(entries, steerEntryKind);
  const begun = all.map(({ data }) => begunIn(data)).findLast((one) => one !== null);
  if (begun === undefined || begun === null) return null;
  const answers: SteerAnswer[] = [];
  let lastEntry: string | null = null;
  for (const { id, data } of all) {
    const kept = answerIn(data, begun.session);
    // one that was written twice counts once
    if (kept === null || kept.number !== answers.length) continue;
    answers.push(kept.answer);
    lastEntry = id;
  }
  return { ...begun, answers, lastEntry };
}

function begunIn(data: unknown): SteerBegun | null {
  const read = fieldsOf(data);
  const { session, does, near, far, readingError, version, practice } = read;
  if (does !== 'begin' || typeof session !== 'string') return null;
  if (typeof near !== 'number' || typeof far !== 'number' || typeof readingError !== 'number') return null;
  return {
    session,
    cards: { near, far, readingError },
    version: typeof version === 'number' ? version : null,
    meter: meterFrom(read.meter),
    practice: typeof practice === 'number' ? practice : null,
  };
}

/** Steers from before a meter was kept counted for an ordinary one. */
function meterFrom(data: unknown): SteerMeter {
  const { name, seen, updateTime } = fieldsOf(data);
  const isMeter =
    typeof seen === 'number' && seen > 0 && seen < 1 && typeof updateTime === 'number' && updateTime > 0;
  return isMeter ? { name: typeof name === 'string' ? name : null, seen, updateTime } : ordinaryMeter;
}

function answerIn(
  data: unknown,
  of: string,
): { readonly number: number; readonly answer: SteerAnswer } | null {
  const { session, does, number, answer } = fieldsOf(data);
  if (does !== 'answer' || session !== of || typeof number !== 'number' || typeof answer !== 'string')
    return null;
  const read = steerAnswerIn(answer);
  return read === null ? null : { number, answer: read };
}

/** An answer as it was written, JSON; null if it is none. */
export function steerAnswerIn(text: string): SteerAnswer | null {
  let read: Readonly<Record<string, unknown>>;
  try {
    read = fieldsOf(JSON.parse(text));
  } catch {
    return null;
  }
  switch (read.outcome) {
    case 'did':
    case 'light':
    case 'dark':
      return { outcome: read.outcome };
    case 'went': {
      const to = (['left', 'right', 'up', 'down'] as const).find((way) => way === read.to);
      return to === undefined ? null : { outcome: 'went', to };
    }
    case 'read': {
      const { near, far } = fieldsOf(read.offsets);
      const [onNear, onFar] = [offsetFrom(near), offsetFrom(far)];
      if (onNear === null || onFar === null) return null;
      const offsets = { near: onNear, far: onFar };
      const { readingError } = read;
      return typeof readingError === 'number'
        ? { outcome: 'read', offsets, readingError }
        : { outcome: 'read', offsets };
    }
    default:
      return null;
  }
}

function offsetFrom(data: unknown): CardOffset | null {
  const { x, y } = fieldsOf(data);
  return typeof x === 'number' && typeof y === 'number' ? { x, y } : null;
}

const fieldsOf = (data: unknown): Readonly<Record<string, unknown>> =>
  typeof data === 'object' && data !== null ? (data as Readonly<Record<string, unknown>>) : {};
