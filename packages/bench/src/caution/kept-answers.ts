/** What the bench book holds about cautions: answers, laser by laser, and what was read before a step. */
import type { Launch } from '../launch/launch.ts';
import { Refusal } from '../refusal.ts';
import type { Answers } from './answers.ts';
import { readAnswers } from './read-answers.ts';
import { type StepName, stepNames } from './step-names.ts';

/** An entry of the bench book, as far as it matters here. */
export interface BookEntry {
  readonly id: string;
  /** When it was entered, as a text whose order is that of time. */
  readonly time: string;
  readonly kind: string;
  readonly data: unknown;
}

/** An answer that stands: nobody has withdrawn it, and none came after it. */
export interface KeptAnswer {
  readonly entry: string;
  readonly time: string;
  readonly answer: string;
}

/** What was ticked off before a step. */
export interface KeptReading {
  readonly entry: string;
  readonly time: string;
  /** The `readAgainKey` of the step when it was read. */
  readonly key: string;
}

/** The newest answer to every question that was not withdrawn, by the id of the question. */
export function answersThatStand(entries: readonly BookEntry[]): ReadonlyMap<string, KeptAnswer> {
  const standing = new Map<string, KeptAnswer>();
  for (const { id, time, data } of entriesInForce(entries, 'answer')) {
    const [question, answer] = [textOf(data, 'question'), textOf(data, 'answer')];
    if (question !== null && answer !== null) standing.set(question, { entry: id, time, answer });
  }
  return standing;
}

/**
 * Kept answers as the walk of a launch counts with them. One that can no longer be read is left out, which counts as the
 * worse.
 */
export function answersFor(launch: Launch, standing: ReadonlyMap<string, KeptAnswer>): Answers {
  const readable = [...standing].filter(([question, { answer }]) => {
    try {
      readAnswers(launch, { [question]: answer });
      return true;
    } catch (error) {
      if (error instanceof Refusal) return false;
      throw error;
    }
  });
  return readAnswers(
    launch,
    Object.fromEntries(readable.map(([question, { answer }]) => [question, answer])),
  );
}

/** The newest reading of every step that was not withdrawn. */
export function stepsRead(entries: readonly BookEntry[]): ReadonlyMap<StepName, KeptReading> {
  const read = new Map<StepName, KeptReading>();
  for (const { id, time, data } of entriesInForce(entries, 'caution read')) {
    const [caution, key] = [textOf(data, 'caution'), textOf(data, 'key')];
    const step = stepNames.find((name) => caution === cautionOfStep(name));
    if (step !== undefined && key !== null) read.set(step, { entry: id, time, key });
  }
  return read;
}

/** What an entry of kind `caution read` names a step by. */
export const cautionOfStep = (step: StepName): string => `step ${step}`;

/** Whether a step counts as read, was read for another bench, or was never read. */
export function readingOf(
  read: KeptReading | undefined,
  { readAgainKey }: { readonly readAgainKey: string },
): 'read' | 'read for another bench' | 'not read' {
  if (read === undefined) return 'not read';
  return read.key === readAgainKey ? 'read' : 'read for another bench';
}

/** Entries of one kind that nobody has withdrawn, oldest first. */
export function entriesInForce(entries: readonly BookEntry[], kind: string): readonly BookEntry[] {
  const withdrawn = new Set(
    entries.flatMap((entry) => (entry.kind === 'withdrawn' ? [textOf(entry.data, 'entry')] : [])),
  );
  return (
    entries
      .filter((entry) => entry.kind === kind && !withdrawn.has(entry.id))
      // the bench book tells the newest first; of one moment the later entry counts
      .toReversed()
      .toSorted((a, b) => (a.time < b.time ? -1 : a.time > b.time ? 1 : 0))
  );
}

function textOf(data: unknown, key: string): string | null {
  if (typeof data !== 'object' || data === null) return null;
  const value = (data as Readonly<Record<string, unknown>>)[key];
  return typeof value === 'string' ? value : null;
}
