import { posix, win32 } from 'node:path';

/** What decides where a user's data lie. */
export interface Surroundings {
  readonly platform: NodeJS.Platform;
  readonly home: string;
  readonly env: { readonly [name: string]: string | undefined };
}

/**
 * Where the bench book lies if nobody says otherwise.
 *
 * @source XDG Base Directory Specification 0.8 for Linux and its like (a relative XDG_DATA_HOME counts as unset);
 *   common practice for macOS and Windows; from memory
 */
export function dataFolder({ platform, home, env }: Surroundings): string {
  switch (platform) {
    case 'darwin':
      return posix.join(home, 'Library', 'Application Support', 'Coreward');
    case 'win32':
      return win32.join(env.LOCALAPPDATA ?? win32.join(home, 'AppData', 'Local'), 'Coreward');
    default: {
      const named = env.XDG_DATA_HOME ?? '';
      return posix.join(posix.isAbsolute(named) ? named : posix.join(home, '.local', 'share'), 'coreward');
    }
  }
}
