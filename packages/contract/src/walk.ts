import { type Screw, type WalkAct, type WalkAnswer, walkMeters } from '@coreward/bench';
import { idText, timeText, versionNumber } from './written.ts';
import { z } from './zod.ts';

/** Acts that one walk may have; far more than anybody's patience. */
export const mostWalkActs = 2_000;

/** A reading of the meter, in its own unit, or of nothing at all. */
const reading = z.number().check(z.gte(0), z.lte(1e12));

const screw: z.ZodMiniType<Screw> = z.strictObject({
  mirror: z.enum(['M1', 'M2']),
  axis: z.enum(['horizontal', 'vertical']),
});

/** What the hand answers to a step, bench's `WalkAnswer`. */
const walkAnswer: z.ZodMiniType<WalkAnswer> = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('did'),
    highest: z.exactOptional(reading),
    standing: z.exactOptional(reading),
    before: z.exactOptional(reading),
  }),
  z.strictObject({ outcome: z.literal('did-not-work') }),
  z.strictObject({ outcome: z.literal('skipped') }),
]);

/** One thing done in a walk. An undone answer stays in the book; it counts no longer. */
const walkAct: z.ZodMiniType<WalkAct> = z.discriminatedUnion('do', [
  z.strictObject({ do: z.literal('answer'), answer: walkAnswer }),
  z.strictObject({ do: z.literal('undo') }),
]);

/** How a walk is led: by the layout and a model, or as one is taught it, without either. */
export const walkProcedure = z.enum(['ridge', 'taught']);

/** What a walk is, from its beginning on. */
const walkFacts = {
  procedure: walkProcedure,
  /** What tells the light, and in which unit. */
  meter: z.enum(walkMeters),
  /** The simulated bench that is walked; null: a real one. */
  seed: z.nullable(z.int().check(z.gte(0), z.lte(2 ** 32 - 1))),
} as const;

/** A walk as it is kept: a launch has at most one that goes on, the newest. */
export const keptWalk = z.strictObject({
  id: idText,
  launch: idText,
  /** The version of the launch that stood on the bench when it began. */
  version: versionNumber,
  begun: timeText,
  ...walkFacts,
  acts: z.array(walkAct).check(z.maxLength(mostWalkActs)),
});
export type KeptWalk = z.infer<typeof keptWalk>;

/** The newest walk of a launch; `meter` is what a practice bench shows, null on a real one. */
export const walkStands = z.strictObject({ walk: z.nullable(keptWalk), meter: z.nullable(reading) });
export type WalkStands = z.infer<typeof walkStands>;

/** Begins a walk in place of the one before. */
export const beginWalk = z.strictObject({
  write: idText,
  procedure: walkProcedure,
  /** Of a real bench; a simulated one has its own, in W. */
  meter: z.enum(walkMeters),
  /** Whether a simulated bench is walked; its seed is drawn by the station if none is given. */
  practice: z.nullable(z.strictObject({ seed: z.nullable(z.int().check(z.gte(0), z.lte(2 ** 32 - 1))) })),
});
export type BeginWalk = z.infer<typeof beginWalk>;

/** One act behind the first `after` of them. Where another page was first, the answer is 409 with the walk as it is. */
export const writeWalkAct = z.strictObject({
  write: idText,
  after: z.int().check(z.gte(0)),
  act: walkAct,
});
export type WriteWalkAct = z.infer<typeof writeWalkAct>;

/** A screw of a practice bench turned by hand, turns; 0 only looks at the meter. */
export const turnScrew = z.strictObject({
  write: idText,
  screw,
  turns: z.number().check(z.gte(-4), z.lte(4)),
});
export type TurnScrew = z.infer<typeof turnScrew>;

/** What the meter of a practice bench shows now. */
export const meterAnswer = z.strictObject({ meter: reading });

/** Lets the simulated hand do the step that is asked, and answer it. */
export const handDoes = z.strictObject({ write: idText, after: z.int().check(z.gte(0)) });
