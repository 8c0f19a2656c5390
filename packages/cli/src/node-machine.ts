import { randomBytes } from 'node:crypto';
import { homedir } from 'node:os';
import { fileURLToPath } from 'node:url';
import type { Machine } from './shell.ts';

/** What a station needs of the real machine, by way of Node. */
export function nodeMachine(process: NodeJS.Process): Machine {
  const { stdin, env, platform } = process;
  return {
    now: () => new Date(),
    randomBytes,
    platform,
    home: homedir(),
    env,
    // the same from src/ and from dist/
    screens: fileURLToPath(new URL('../../web/dist', import.meta.url)),
    async openPage(address) {
      // without a display a browser could only fail, or take over the terminal
      const hasDisplay = (env.DISPLAY ?? '') !== '' || (env.WAYLAND_DISPLAY ?? '') !== '';
      if (platform === 'linux' && !hasDisplay) return false;
      const { default: open } = await import('open');
      try {
        const opener = await open(address);
        opener.on('error', () => {}); // the address stands in the terminal, whatever happens here
        return true;
      } catch {
        return false;
      }
    },
    onEnter(listener) {
      if (stdin.isTTY !== true) return () => {};
      stdin.on('data', listener).resume();
      return () => stdin.off('data', listener).pause();
    },
    untilStopped: () =>
      new Promise((resolve) => {
        for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
      }),
  };
}
