#!/usr/bin/env node
import { existsSync } from 'node:fs';

const main = new URL('../dist/main.js', import.meta.url);
if (existsSync(main)) {
  await import(main.href);
} else {
  process.stderr.write(
    'coreward has not been built yet. Type `npm run build` in the checkout, then try again.\n',
  );
  process.exitCode = 2;
}
