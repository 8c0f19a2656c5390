import {
  type Screw,
  type TurnedScrew,
  type WalkAct,
  type WalkAnswer,
  type WalkReads,
  type WalkTruth,
  walkMeters,
} from '@coreward/bench';
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

/** What reads the light of a walk, bench's `WalkReads`. */
const walkReads: z.ZodMiniType<WalkReads> = z.strictObject({
  instrument: z.nullable(idText),
  meter: z.enum(walkMeters),
  floor: z.nullable(z.number()),
  goesOn: z.boolean(),
});

const answered = z.strictObject({ do: z.literal('answer'), answer: walkAnswer });
const undone = z.strictObject({ do: z.literal('undo') });

/** One thing done in a walk. An undone answer stays in the book; it counts no longer. */
const walkAct: z.ZodMiniType<WalkAct> = z.discriminatedUnion('do', [
  answered,
  undone,
  z.strictObject({ do: z.literal('reads'), reads: walkReads, anew: z.boolean() }),
]);

/** How a walk is led: by the layout and a model, or as one is taught it, without either. */
export const walkProcedure = z.enum(['ridge', 'taught']);

/** What a walk is, from its beginning on. */
const walkFacts = {
  procedure: walkProcedure,
  /** What tells the light, and in which unit, until an act says otherwise. */
  reads: walkReads,
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
  /** When each of them was done. A step is asked since the act before it, and since then readings count for it. */
  times: z.array(timeText).check(z.maxLength(mostWalkActs)),
});
export type KeptWalk = z.infer<typeof keptWalk>;

/** Where a practice bench stands in truth, bench's `WalkTruth`. */
const walkTruth: z.ZodMiniType<WalkTruth> = z.strictObject({
  share: z.number(),
  focus: z.number(),
  offsets: z.array(z.strictObject({ screw, turns: z.number() })),
});

const turnedScrew: z.ZodMiniType<TurnedScrew> = z.strictObject({ screw, turns: z.number() });

/** Told to every page when a screw of a practice bench was turned: which one was last, in the step behind `after` acts. */
export const turnedMessage = z.strictObject({
  type: z.literal('turned'),
  walk: idText,
  after: z.int().check(z.gte(0)),
  turned: turnedScrew,
});

/** The newest walk of a launch. */
export const walkStands = z.strictObject({
  walk: z.nullable(keptWalk),
  /** The bench it practises on; null: a real one, or none. */
  practice: z.nullable(
    z.strictObject({
      /** Whether something stands before its beam. */
      isBlocked: z.boolean(),
      /** The screw that was turned last in this step; null: none was. */
      turned: z.nullable(turnedScrew),
      /** Null until the walk has its verdict. */
      truth: z.nullable(walkTruth),
    }),
  ),
});
export type WalkStands = z.infer<typeof walkStands>;

/** What shall read the light: a hand types it, an eye tells it, or an instrument of the bench book. */
export const chosenReads = z.discriminatedUnion('by', [
  z.strictObject({ by: z.literal('typed') }),
  z.strictObject({ by: z.literal('eye') }),
  z.strictObject({ by: z.literal('instrument'), id: idText }),
]);
export type ChosenReads = z.infer<typeof chosenReads>;

/** Begins a walk in place of the one before. */
export const beginWalk = z.strictObject({
  write: idText,
  procedure: walkProcedure,
  /** Of a real bench. A simulated one has a meter of its own, which is switched on with it, unless an eye tells. */
  reads: chosenReads,
  goesOn: z.boolean(),
  /** Whether a simulated bench is walked; its seed is drawn by the station if none is given. */
  practice: z.nullable(z.strictObject({ seed: z.nullable(z.int().check(z.gte(0), z.lte(2 ** 32 - 1))) })),
});
export type BeginWalk = z.infer<typeof beginWalk>;

/** One act behind the first `after` of them. Where another page was first, the answer is 409 with the walk as it is. */
export const writeWalkAct = z.strictObject({
  write: idText,
  after: z.int().check(z.gte(0)),
  act: z.discriminatedUnion('do', [answered, undone]),
});
export type WriteWalkAct = z.infer<typeof writeWalkAct>;

/**
 * What reads the light from now on. With the same as before, the readings of the step are heard anew; with `anew` all of the
 * walk, because they no longer compare: a gain was lowered, or the power.
 */
export const chooseReads = z.strictObject({
  write: idText,
  after: z.int().check(z.gte(0)),
  reads: chosenReads,
  goesOn: z.boolean(),
  anew: z.boolean(),
});
export type ChooseReads = z.infer<typeof chooseReads>;

/** A screw of a practice bench turned by hand, turns; 0 only looks at the meter. */
export const turnScrew = z.strictObject({
  write: idText,
  screw,
  turns: z.number().check(z.gte(-4), z.lte(4)),
});
export type TurnScrew = z.infer<typeof turnScrew>;

/** The beam of a practice bench blocked before the fibre, or let through. */
export const blockBeam = z.strictObject({ write: idText, blocked: z.boolean() });

/** What the meter of a practice bench shows now. */
export const meterAnswer = z.strictObject({ meter: reading });

/** Lets the simulated hand do the step that is asked, and answer it. */
export const handDoes = z.strictObject({ write: idText, after: z.int().check(z.gte(0)) });
