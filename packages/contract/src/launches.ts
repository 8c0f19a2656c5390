import { documentText, idText, versionFacts, writeKeys } from './written.ts';
import { z } from './zod.ts';

/** A launch in a list. */
export const launchSummary = z.strictObject({ id: idText, ...versionFacts });
export type LaunchSummary = z.infer<typeof launchSummary>;

/** A launch, in its newest or an earlier version. `text` is the launch document. */
export const keptLaunch = z.strictObject({ id: idText, ...versionFacts, text: documentText });
export type KeptLaunch = z.infer<typeof keptLaunch>;

/** A new version of a launch, or with `base: 0` a new launch. The text must read as a launch. */
export const writeLaunch = z.strictObject({
  ...writeKeys,
  text: documentText,
  putAway: z.boolean(),
  invented: z.boolean(),
});
export type WriteLaunch = z.infer<typeof writeLaunch>;

/** In the order of their last change, newest first, put-away ones included. */
export const launchesAnswer = z.strictObject({ launches: z.array(launchSummary) });
export type LaunchesAnswer = z.infer<typeof launchesAnswer>;

/** Every version there was, newest first. */
export const launchVersionsAnswer = z.strictObject({
  id: idText,
  versions: z.array(z.strictObject(versionFacts)),
});
export type LaunchVersionsAnswer = z.infer<typeof launchVersionsAnswer>;
