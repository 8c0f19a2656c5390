// Builds what a checkout runs: the command line (with the station inside) and the screens it serves.
import { build } from 'esbuild';
import { build as buildScreens } from 'vite';

await build({
  entryPoints: ['packages/cli/src/main.ts'],
  outfile: 'packages/cli/dist/main.js',
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  sourcemap: true,
  logLevel: 'warning',
  // native code cannot be bundled; it is found in node_modules
  external: ['better-sqlite3'],
  // commander and others are CommonJS: bundled into ESM they need a `require` of their own
  banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
});

await buildScreens({ configFile: 'packages/web/vite.config.ts', logLevel: 'warn' });
