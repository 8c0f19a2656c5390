// Bundles the benches and runs them: unbundled, the loader's own accessors would be timed as well.
import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { build } from 'esbuild';

const folder = mkdtempSync(join(process.cwd(), 'node_modules', '.bench-'));
const outfile = join(folder, 'bench.mjs');
try {
  await build({
    entryPoints: ['scripts/bench/main.ts'],
    outfile,
    bundle: true,
    platform: 'node',
    target: 'node20',
    format: 'esm',
    logLevel: 'warning',
    banner: { js: "import{createRequire}from'node:module';const require=createRequire(import.meta.url);" },
  });
  process.exitCode = spawnSync(process.execPath, [outfile], { stdio: 'inherit' }).status ?? 1;
} finally {
  rmSync(folder, { recursive: true, force: true });
}
