import { expect, test } from 'vitest';
import type { Ear } from './instrument.ts';
import { replay } from './replay.ts';

test('a log that is being played goes on when the clock is set back', async () => {
  let shift = 0;
  const now = () => new Date(Date.now() + shift);
  const heard: number[] = [];
  const log = 't,power_mW\n0,1.0\n0.1,2.0\n0.2,3.0\n';
  await new Promise<void>((ended) => {
    const ear: Ear = {
      heard: (said) => {
        if (said.kind === 'value') heard.push(said.value);
        shift = -3_600_000;
      },
      silent: () => ended(),
    };
    replay({ kind: 'replay', log, unit: 'W', speed: 1 }, ear, now).start();
  });
  expect(heard).toEqual([1e-3, 2e-3, 3e-3]);
});
