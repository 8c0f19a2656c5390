// Builds what a checkout runs: the command line (with the station inside) and the screens it serves.
// `node scripts/build.mjs cli` leaves the screens as they are.
import { buildCommandLine } from './build-command-line.mjs';

await buildCommandLine('packages/cli/dist');
if (process.argv[2] !== 'cli') {
  const { build } = await import('vite');
  await build({ configFile: 'packages/web/vite.config.ts', logLevel: 'warn' });
}
