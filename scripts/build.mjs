// Bundles what a checkout runs: the command line. Native packages would stay outside; there are none yet.
import { build } from 'esbuild';

await build({
  entryPoints: ['packages/cli/src/main.ts'],
  outfile: 'packages/cli/dist/main.js',
  bundle: true,
  platform: 'node',
  target: 'node20',
  format: 'esm',
  sourcemap: true,
  logLevel: 'warning',
  // commander is CommonJS: bundled into ESM it needs a `require` of its own
  banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
});
