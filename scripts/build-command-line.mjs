import { readdirSync, rmSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build } from 'esbuild';

/** Builds the command line, the station in it, into a folder of this checkout: its packages are looked for from there. */
export async function buildCommandLine(folder) {
  const { metafile } = await build({
    entryPoints: ['packages/cli/src/main.ts'],
    outdir: folder,
    // what only the station needs is loaded only by the station
    splitting: true,
    metafile: true,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    sourcemap: true,
    logLevel: 'warning',
    // native code cannot be bundled; it is found in node_modules
    external: ['better-sqlite3', 'serialport'],
    // commander and others are CommonJS: bundled into ESM they need a `require` of their own
    banner: {
      js: "import{createRequire as makeRequire}from'node:module';const require=makeRequire(import.meta.url);",
    },
  });
  // what an earlier build left behind
  const fresh = new Set(Object.keys(metafile.outputs).map((path) => basename(path)));
  for (const file of readdirSync(folder)) {
    if (!fresh.has(file)) rmSync(join(folder, file), { recursive: true });
  }
}
