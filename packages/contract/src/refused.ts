import type { RefusalParts } from '@coreward/bench';
import { keptLaunch } from './launches.ts';
import { keptPart } from './parts.ts';
import { keptSettings } from './settings.ts';
import { keptWalk } from './walk.ts';
import { z } from './zod.ts';

/** Why nothing was done, for programs; `refused` says it for people. */
export const refusalCodes = {
  /** What was sent cannot be taken as it stands. */
  refused: 422,
  /** What was sent is not JSON, or not what this route asks for. */
  malformed: 400,
  /** There is nothing here by that name. */
  unknown: 404,
  /** The bench book has moved on; `current` is what it holds. */
  stale: 409,
  /** This page or device is not let in: pair it, or on the station's computer reload. */
  unpaired: 401,
  /** Let in, but not for this; or sent from a foreign page. */
  forbidden: 403,
  /** More than may be sent at once. */
  'too long': 413,
  /** Too much in too short a time. */
  'too often': 429,
  /** The disk or the bench book does not take it: full, read-only, damaged. */
  'not kept': 507,
  /** A fault of ours. */
  fault: 500,
} as const;
export type RefusalCode = keyof typeof refusalCodes;

/** One thing that is refused, in bench's form. */
export const refusalParts: z.ZodMiniType<RefusalParts> = z.strictObject({
  where: z.string(),
  what: z.string(),
  mend: z.string(),
});

/** The answer to anything that was not done. Its HTTP status is that of its code. */
export const refusedAnswer = z.strictObject({
  code: z.enum(Object.keys(refusalCodes) as [RefusalCode, ...RefusalCode[]]),
  refused: z.array(refusalParts),
  /** With `stale`: what the bench book holds; null where it holds nothing by that name. */
  current: z.optional(z.nullable(z.union([keptLaunch, keptPart, keptSettings, keptWalk]))),
});
export type RefusedAnswer = z.infer<typeof refusedAnswer>;
