import { expect, test } from 'vitest';
import type { Reading } from '../instrument/reading.ts';
import { type FollowedTurn, notFollowed, withHeld } from './follow-turn.ts';
import type { TurnContext } from './live-turn.ts';
import { turnNow } from './turn-now.ts';

const context: TurnContext = {
  step: { kind: 'sweep', screw: { mirror: 'M2', axis: 'horizontal' }, reach: null, why: 'climb' },
  floor: 0.001,
  peak: 1,
  noise: null,
  turned: null,
};
const noon = 1e12;
const hour = 3_600_000;

/** A page that looks once a second at what a meter of ten readings a second has told, which goes from one light to the next. */
function page(since: number) {
  let followed: FollowedTurn = notFollowed;
  const held: Reading[] = [];
  let [at, light] = [noon, 0.5];
  let asked = { key: 'first', since, context };
  return {
    /** The station's clock is set by so much. */
    setClock: (by: number) => {
      at += by;
    },
    /** Another step is asked now. */
    nextStep: () => {
      asked = { key: 'next', since: at, context };
    },
    /** What the station sends anew are other objects. */
    refetch: () => {
      held.splice(0, held.length, ...held.map((one) => ({ ...one })));
    },
    hear: (...lights: readonly number[]) => {
      for (const to of lights) {
        for (let i = 1; i <= 10; i += 1) {
          at += 100;
          held.push({ t: at, value: light + ((to - light) * i) / 10, saturated: false });
        }
        light = to;
        followed = withHeld(followed, asked, held);
      }
      return turnNow(followed.turn, context, false);
    },
  };
}

const up = [0.7, 0.9, 1] as const;
const down = [0.9, 0.7] as const;
const back = [0.9, 1, 1, 1] as const;

// the same hand, whatever the clock does; which sign is said when is what live-turn.test holds
for (const by of [-hour, -300_000, -5_000, 5_000, hour]) {
  test(`a clock set by ${by / 1000} s in a turn takes nothing from it: past its peak, back, taken`, () => {
    const { hear, setClock } = page(noon);
    hear(...up);
    setClock(by);
    const past = hear(...down);
    expect(past.sign).toBe('past');
    expect(past.shown).toBeCloseTo(0.7, 1);
    expect(past.goal).toBeCloseTo(1, 1);
    expect(hear(...back)).toMatchObject({ sign: 'back-at-peak', isSettled: true });
  });

  test(`a step that is asked after the clock was set by ${by / 1000} s hears nothing of the one before`, () => {
    const { hear, setClock, nextStep } = page(noon);
    hear(...up, ...down);
    setClock(by);
    hear(0.3);
    nextStep();
    expect(hear(0.35).held).toBeLessThan(0.4);
    expect(hear(0.5, 0.6).sign).toBe('rising');
  });
}

test('a clock set back between the question and the first reading does not make the page deaf', () => {
  const { hear, setClock, nextStep } = page(noon);
  hear(0.5);
  nextStep();
  setClock(-hour);
  hear(...up);
  expect(hear(...down).sign).toBe('past');
});

test('neither silence nor a clock set forth counts as time in the dark, or as a screw that nothing follows', () => {
  const dark = page(noon);
  dark.hear(0.001, 0.001, 0.001);
  dark.setClock(hour);
  // four seconds of dark are told, two are not: the first of them is still a fall
  expect(dark.hear(0.001).sign).not.toBe('dark');
  const still = page(noon);
  still.hear(0.5, 0.5);
  still.setClock(hour);
  expect(still.hear(0.5).sign).not.toBe('still');
});

test('what was asked for anew is heard once', () => {
  const whole = page(noon);
  whole.hear(...up);
  whole.refetch();
  const past = whole.hear(...down);
  expect(past.sign).toBe('past');
  whole.refetch();
  whole.setClock(-hour);
  expect(whole.hear(...back).sign).toBe('back-at-peak');
});
