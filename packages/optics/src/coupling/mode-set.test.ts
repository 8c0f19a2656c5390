import { expect, test } from 'vitest';
import { spectrum } from '../fibre/guided-mode.ts';
import { orientations } from '../fibre/lp-mode.ts';
import { modeSet, onlyFundamental } from './mode-set.ts';

test.each([3, 6, 11])(
  'at V = %d the modes have no more power at steep angles than their tail promises',
  (vNumber) => {
    const set = modeSet('step', vNumber);
    for (const from of [4 * vNumber, 8 * vNumber]) {
      // trapezoid to 40 V, where what is left has fallen by (40/4)⁵
      let power = 0;
      const step = 0.02;
      for (let q = from; q < 40 * vNumber; q += step) {
        for (const mode of set.modes) power += orientations(mode) * step * q * spectrum(mode, q) ** 2;
      }
      expect(power).toBeLessThan(set.tailBeyond(from));
      // and the promise is not an idle one
      expect(power).toBeGreaterThan(set.tailBeyond(from) / 10);
    }
  },
);

test('modes near their cut-off can be left out, LP01 never', () => {
  const all = modeSet('step', 3.84); // LP02 and LP21 appear at 3.832
  const firm = modeSet('step', 3.84, 24, 0.25);
  expect(all.modes.length).toBe(4);
  expect(firm.modes.map(({ l, m }) => `${l}${m}`)).toEqual(['01', '11']);
  expect(modeSet('step', 1, 24, 5).modes.length).toBe(1);
  expect(onlyFundamental(all).modes.map(({ l, m }) => `${l}${m}`)).toEqual(['01']);
});
