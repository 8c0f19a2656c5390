import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { nodeShell } from './node-shell.ts';
import type { CreateOutcome } from './shell.ts';
import { writeNew } from './write-new.ts';

const shell = nodeShell(process);
const ending = (outcome: CreateOutcome) => ({ ...shell, create: async () => outcome });

test('a full disk is told as one, with what to do', async () => {
  const written = writeNew('book.json', '{}', 'coreward export WHERE', ending({ kind: 'full' }));
  await expect(written).rejects.toThrow(
    /^book\.json: the disk is full, and this file was not written\. Make room on it, or name a folder on another one/u,
  );
});

test('a new file stands alone under its name, and none that is there is written over', async () => {
  const folder = mkdtempSync(join(tmpdir(), 'coreward-new-'));
  try {
    const path = join(folder, 'a', 'b.yaml');
    await writeNew(path, 'one', 'coreward export WHERE', shell);
    expect(readdirSync(join(folder, 'a'))).toEqual(['b.yaml']);
    await expect(writeNew(path, 'two', 'coreward export WHERE', shell)).rejects.toThrow('not overwritten');
    expect(readFileSync(path, 'utf8')).toBe('one');
    // what was killed while it wrote is written anew
    writeFileSync(join(folder, 'c.yaml.part'), 'half');
    await writeNew(join(folder, 'c.yaml'), 'whole', 'coreward export WHERE', shell);
    expect(readdirSync(folder).sort()).toEqual(['a', 'c.yaml']);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
