import { documentText, timeText, writeKeys } from './written.ts';
import { z } from './zod.ts';

/** What holds for the bench book as a whole, on every page that shows it. */
export const settings = z.strictObject({
  /** A dark room spares dark-adapted eyes; `system` follows what the device is set to. */
  theme: z.enum(['dark', 'light', 'system']),
  /** A drawer document with nothing but `path`: the way from any laser to any collimator; null: nothing lies between. */
  drawerPath: z.nullable(documentText),
});
export type Settings = z.infer<typeof settings>;

/** Settings before anyone has set any. */
export const settingsAtFirst: Settings = { theme: 'dark', drawerPath: null };

/** Settings as kept; version 0 are those at first. */
export const keptSettings = z.strictObject({
  version: z.int().check(z.gte(0)),
  changed: z.nullable(timeText),
  settings,
});
export type KeptSettings = z.infer<typeof keptSettings>;

/** A new version of the settings. */
export const writeSettings = z.strictObject({ ...writeKeys, settings });
export type WriteSettings = z.infer<typeof writeSettings>;
