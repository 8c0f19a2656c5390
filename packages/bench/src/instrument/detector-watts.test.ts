import { expect, test } from 'vitest';
import { readDrawer } from '../drawer/read-drawer.ts';
import { detectorOf, detectorWatts, detectorWords, readBy } from './detector-watts.ts';

const detector = (keys: string) =>
  readDrawer([{ text: `coreward: 1\ndetectors:\n  - { name: d, kind: photodiode${keys} }\n`, file: 'd' }])
    .detectors[0]!;

test('88 mV over 220 Ω from a diode of 0.4 A/W are 1 mW (V = P·R·R_L), with the doubt of all three', () => {
  const diode = detector(', responsivity: { value: 0.4 A/W ± 5 %, at: 635 nm }, load: 220 Ω ± 1 %');
  const found = detectorWatts(diode, 'V', 88e-3, 0.88e-3);
  if (!found.ok) throw new Error(found.what);
  expect(found.power.value).toBeCloseTo(1e-3, 12);
  // 5 %, 1 % and 1 % in quadrature; slopes are differences one uncertainty wide, which bends them by 0.3 % of themselves
  expect(found.power.uncertainty / 1e-3 / Math.hypot(0.05, 0.01, 0.01)).toBeCloseTo(1, 2);
  expect(detectorWords(found.power, diode.at!.value)).toMatch(
    /^1 mW ± 0\.05\d? mW, for light of 635 nm$|^1\.\d+ mW ± .* 635 nm$/u,
  );
});

test('a current needs no load; what is missing is told', () => {
  const bare = detector(', responsivity: 0.5 A/W');
  const found = detectorWatts(bare, 'A', 1e-6, null);
  expect(found.ok && found.power.value).toBeCloseTo(2e-6, 15);
  expect(detectorWatts(bare, 'V', 1, null)).toMatchObject({
    ok: false,
    what: expect.stringContaining('resistor'),
  });
  expect(detectorWatts(detector(''), 'A', 1, null)).toMatchObject({ ok: false });
  expect(detectorWatts(bare, 'W', 1, null)).toMatchObject({
    ok: false,
    what: expect.stringContaining('`W`'),
  });
});

test('an instrument is written into a detector by name, and taken out again', () => {
  const part = {
    kind: 'detector',
    text: 'coreward: 1\ndetectors:\n  - { name: d, kind: photodiode }\n',
  } as const;
  const held = readBy(part, 'meter: left');
  expect(detectorOf(held)!.readBy).toBe('meter: left');
  expect(detectorOf(readBy(held, null))!.readBy).toBeNull();
  expect(detectorOf({ kind: 'detector', text: 'coreward: 1\n' })).toBeNull();
});
