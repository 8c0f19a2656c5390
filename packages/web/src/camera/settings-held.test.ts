import { expect, test } from 'vitest';
import { exposureOf, type HeldTrack, holdSettings, setExposure } from './settings-held.ts';

/** A camera with a will of its own: it offers `can`, and takes what `takes` lets it. */
function played(can: object, start: object, takes: (wanted: Readonly<Record<string, unknown>>) => boolean) {
  let settings: object = start;
  const track: HeldTrack = {
    getCapabilities: () => can,
    getSettings: () => settings,
    applyConstraints: async ({ advanced }) => {
      const wanted = (advanced?.[0] ?? {}) as Readonly<Record<string, unknown>>;
      if (!takes(wanted)) throw new Error('not taken');
      settings = { ...settings, ...wanted };
    },
  };
  return { track, settings: () => settings };
}

const everything = {
  exposureMode: ['continuous', 'manual'],
  whiteBalanceMode: ['continuous', 'manual'],
  focusMode: ['continuous'],
  exposureTime: { min: 1, max: 2000, step: 1 },
};

test('a camera holds what it offers to hold, at what it is, and says plainly what it cannot', async () => {
  const { track, settings } = played(
    everything,
    { exposureMode: 'continuous', exposureTime: 250 },
    () => true,
  );
  expect(await holdSettings(track)).toEqual([
    { name: 'exposure', outcome: 'held' },
    { name: 'white balance', outcome: 'held' },
    { name: 'focus', outcome: 'cannot be asked' },
  ]);
  expect(settings()).toMatchObject({
    exposureMode: 'manual',
    exposureTime: 250,
    whiteBalanceMode: 'manual',
  });
});

test('a camera that throws, or nods and does nothing, has not held it', async () => {
  const throwing = played(everything, {}, () => false);
  const [exposure] = await holdSettings(throwing.track);
  expect(exposure?.outcome).toBe('refused');
  const nodding: HeldTrack = { ...throwing.track, applyConstraints: async () => {} };
  expect((await holdSettings(nodding))[0]?.outcome).toBe('refused');
});

test('a browser that tells nothing of a camera offers nothing', async () => {
  const plain: HeldTrack = { getSettings: () => ({}), applyConstraints: async () => {} };
  expect((await holdSettings(plain)).map(({ outcome }) => outcome)).toEqual([
    'cannot be asked',
    'cannot be asked',
    'cannot be asked',
  ]);
  expect(exposureOf(plain)).toBeNull();
});

test('the exposure is set within its limits as the camera tells them', async () => {
  const { track, settings } = played(everything, { exposureTime: 250 }, () => true);
  expect(exposureOf(track)).toEqual({ least: 1, most: 2000, step: 1, now: 250 });
  expect(await setExposure(track, 40)).toBe(true);
  expect(settings()).toMatchObject({ exposureMode: 'manual', exposureTime: 40 });
});
