import { normalFrom, seededUniform } from '@coreward/optics';
import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { type PracticeBench, practiceBench } from '../practice/practice-bench.ts';
import { hiddenBenchOf } from '../practice/practice-of-launch.ts';
import { heardInTurn, newTurn, type Turn, type TurnContext } from './live-turn.ts';
import type { Screw, WalkStep } from './step.ts';
import { turnNow } from './turn-now.ts';
import type { TurnNow, TurnSign } from './turn-sign.ts';
import { turnSaid } from './turn-words.ts';

const m2h: Screw = { mirror: 'M2', axis: 'horizontal' };
const m2v: Screw = { mirror: 'M2', axis: 'vertical' };
const m1v: Screw = { mirror: 'M1', axis: 'vertical' };
const sweepOf = (screw: Screw): WalkStep => ({ kind: 'sweep', screw, reach: null, why: 'climb' });
const dark = 50e-9;

/**
 * What is said after each click of a screw, 0.8 s a click, by a meter of ten readings a second with 3 % of noise and a quarter of
 * its floor, as practice benches have at most. Readings in W. They are what a person read off a practice bench, the dimmest
 * between two of them filled in.
 */
function clicked(
  step: WalkStep,
  values: readonly number[],
  seed = 1,
  context: Partial<TurnContext> = {},
  noise = 0.03,
): readonly TurnNow[] {
  const judged = { floor: dark, peak: null, noise: null, turned: null, ...context, step };
  const random = seededUniform(seed);
  let turn = newTurn;
  let t = 1e12;
  return values.map((value) => {
    for (let i = 0; i < 8; i += 1) {
      t += 100;
      const noisy = value * (1 + noise * normalFrom(random)) + 0.25 * dark * normalFrom(random);
      turn = heardInTurn(turn, judged, { t, value: Math.max(0, noisy), saturated: false });
    }
    return turnNow(turn, judged, false);
  });
}
const signs = (said: readonly TurnNow[]) => said.map(({ sign }) => sign);
const seeds = Array.from({ length: 25 }, (_, seed) => seed);

const fell = [1.2e-6, 1.27e-6, 0.8e-6, 0.45e-6, 0.277e-6];
const inSlack = [0.277e-6, 0.28e-6, 0.286e-6, 0.277e-6, 0.28e-6];
const climbed = [0.6e-6, 1.32e-6, 3.49e-6, 7.49e-6, 12.8e-6, 17e-6];

test('what fell from its start is not forgotten in the slack, and a climb is no peak until it falls', () => {
  for (const floor of [dark, null]) {
    for (const seed of seeds) {
      const said = clicked(sweepOf(m2h), [...fell, ...inSlack, ...climbed], seed, { floor });
      // that it falls on is told for two seconds
      const slack = said.slice(fell.length + 2, fell.length + inSlack.length);
      for (const { sign, goal, isReady } of slack) {
        expect(sign).toBe('other-way');
        // 3 % of noise: the highest of some medians of three is within 3σ of a median's 2 %, and of the 1.2 µW beside it
        expect(goal! / 1.27e-6).toBeGreaterThan(0.93);
        expect(goal! / 1.27e-6).toBeLessThan(1.08);
        expect(isReady).toBe(false);
      }
      expect(signs(said.slice(-climbed.length + 1))).toEqual(Array(5).fill('rising'));
      expect(said.some(({ sign, isReady, isSettled }) => sign === 'past' || isReady || isSettled)).toBe(
        false,
      );
    }
  }
});

test('behind the climb the top is passed, come back to, and only then taken', () => {
  for (const seed of seeds) {
    const all = [...fell, ...climbed, 17.5e-6, 12e-6, 7e-6, 7e-6, 12e-6, 17.2e-6, 17.2e-6, 17.2e-6];
    const said = clicked(sweepOf(m2h), all, seed);
    expect(signs(said.slice(-6, -4))).toEqual(['past', 'past']);
    expect(said.at(-1)).toMatchObject({ sign: 'back-at-peak', isReady: true });
  }
});

test('light that doubles with every click and never falls is never past its peak', () => {
  for (const seed of seeds) {
    const said = clicked(sweepOf(m2v), [16e-6, 16e-6, 32e-6, 69e-6, 125e-6, 125e-6, 125e-6], seed);
    expect(said.some(({ sign }) => sign !== 'seek' && sign !== 'rising')).toBe(false);
    expect(signs(said.slice(2, 5))).toEqual(['rising', 'rising', 'rising']);
    expect(said.some(({ isReady }) => isReady)).toBe(false);
  }
});

test('light that rises again after it fell is told to go on', () => {
  const seen = [4.6e-3, 4.6e-3, 3.4e-3, 2.1e-3, 2.1e-3, 2.78e-3, 3.83e-3, 4.56e-3];
  for (const seed of seeds) {
    // at little noise; at much of it a third more of light may be too little yet to tell
    const usual = clicked(sweepOf(m2h), seen, seed, {}, 0.01);
    expect(usual[3]!.sign).toBe('other-way');
    expect(signs(usual.slice(-3))).toEqual(['rising', 'rising', 'rising']);
    expect(turnSaid(usual.at(-1)!, sweepOf(m2h), 'power').short).toBe('It rises: go on, past the top.');
    expect(signs(clicked(sweepOf(m2h), seen, seed).slice(-2))).toEqual(['rising', 'rising']);
  }
});

test('a peak that is passed again says so, and the next time near enough is taken', () => {
  const over = [9e-6, 20e-6, 28e-6, 28e-6, 20e-6, 9e-6];
  for (const seed of seeds) {
    const back = clicked(sweepOf(m2h), [...over, 9e-6, 20e-6, 26.5e-6, 0.33e-6, 0.33e-6], seed);
    expect(back[7]!.sign).toBe('nearing');
    expect(back.at(-1)!.sign).toBe('passed-again');
    expect(turnSaid(back.at(-1)!, sweepOf(m2h), 'power').short).toMatch(
      /^You passed it again: turn round, back until (2[789](\.\d)?|30(\.\d)?) µW\.$/u,
    );
    const near = [...over, 9e-6, 20e-6, 26.5e-6, 0.33e-6, 0.33e-6, ...Array(6).fill(26.5e-6)];
    // the usual noise: with more of it what is held is higher than the peak, and it takes one pass more
    expect(clicked(sweepOf(m2h), near, seed, {}, 0.02).at(-1)).toMatchObject({
      sign: 'back-at-peak',
      isReady: true,
    });
  }
});

const detune: WalkStep = { kind: 'detune', screw: m1v, sense: 1, target: 1.8e-6, fraction: 0.05 };
const down = [36e-6, 36e-6, 20e-6, 7e-6, 0.9e-6];

test('too far, and back within tolerance, is taken', () => {
  for (const seed of seeds) {
    expect(clicked(detune, down, seed).at(-1)!.sign).toBe('too-low');
    const back = clicked(detune, [...down, 0.9e-6, 1.9e-6, 1.9e-6, 1.9e-6], seed).at(-1)!;
    expect(back).toMatchObject({ sign: 'at-target', isReady: true });
    expect(turnSaid(back, detune, 'power').short).toBe('There: stop, and take it.');
  }
});

test('back too far is told to turn round, over the top is told to come back over it, and its far flank is no target', () => {
  for (const seed of seeds) {
    const back = clicked(detune, [...down, 0.9e-6, 7e-6, 20e-6], seed);
    expect(signs(back.slice(-2))).toEqual(['back-too-far', 'back-too-far']);
    const over = [...down, 0.9e-6, 7e-6, 20e-6, 38e-6, 40e-6, 27e-6, 12e-6, 1.8e-6, 1.8e-6, 1.8e-6];
    const far = clicked(detune, over, seed);
    expect(signs(far.slice(-4))).toEqual(['over-top', 'over-top', 'over-top', 'over-top']);
    expect(far.at(-1)).toMatchObject({ isReady: false, isSettled: false });
    const home = clicked(detune, [...over, 12e-6, 27e-6, 40e-6, 36e-6, 20e-6, 7e-6, 1.9e-6, 1.9e-6], seed);
    expect(home.at(-1)).toMatchObject({ sign: 'at-target', isReady: true });
  }
});

test('steps of a screw too coarse for the target: the nearer of them is taken at last', () => {
  const coarse = [36e-6, 14e-6, 4.3e-6, 0.8e-6, 0.8e-6, 4.3e-6, 4.3e-6, 0.8e-6, 0.8e-6];
  expect(clicked(detune, coarse).at(-1)).toMatchObject({ sign: 'at-target', isReady: true });
});

test('a shallow step is not done before it is begun', () => {
  const shallow: WalkStep = { ...detune, target: 4.2e-3, fraction: 0.8 };
  for (const seed of seeds) {
    const said = clicked(shallow, [5.2e-3, 5.2e-3, 4.9e-3, 4.3e-3, 4.3e-3, 4.3e-3], seed, {}, 0.01);
    expect(signs(said.slice(0, 2))).toEqual(['lower', 'lower']);
    expect(said.at(-1)).toMatchObject({ sign: 'at-target', isReady: true });
  }
});

test('a fall that rises well above its start is asked whether it is the way', () => {
  const said = clicked(detune, [36e-6, 36e-6, 60e-6, 80e-6]).at(-1)!;
  expect(said).toMatchObject({ sign: 'wrong-way', isReady: false });
  expect(turnSaid(said, detune, 'power')).toMatchObject({
    short: 'It rises: is this the way?',
    mend: 'Asked is M1 vertical, onwards. If you turn it the other way, turn round; if not, go on: behind the top it falls, down to 1.8 µW.',
  });
});

test('an answer is ready only where the sign agrees, and a highest one only once the screw has moved', () => {
  const unmoved = clicked(sweepOf(m2h), [1.27e-6, 1.27e-6, 1.27e-6]).at(-1)!;
  expect(unmoved).toMatchObject({ isReady: false, isSettled: false });
  // a hand that means it may take it
  expect(unmoved.take).not.toBeNull();
  expect(turnSaid(unmoved, sweepOf(m2h), 'power').insteadOf).toContain('nothing has moved it');
  const fallen = clicked(sweepOf(m2h), fell).at(-1)!;
  expect(fallen.isReady).toBe(false);
  expect(turnSaid(fallen, sweepOf(m2h), 'power').insteadOf).toMatch(
    /^The meter shows 2\d\d nW now, the best of this turn was 1\.\d+ µW: the screw is not back there\.$/u,
  );
  expect(clicked({ kind: 'turn', screw: m2h, turns: 0.1, reverses: false }, [1e-6]).at(-1)!.isReady).toBe(
    true,
  );
});

test('another screw than the one that is asked is named, and what it does to the light is no peak of the step', () => {
  const over = [9e-6, 20e-6, 28e-6, 20e-6, 9e-6];
  const said = clicked(sweepOf(m2v), over, 1, { turned: m1v }).at(-1)!;
  expect(said).toMatchObject({ sign: 'wrong-screw', wrongScrew: m1v, isReady: false, isSettled: false });
  expect(turnSaid(said, sweepOf(m2v), 'power').short).toBe('You turned M1 vertical; asked is M2 vertical.');
  expect(clicked(sweepOf(m2v), over, 1, { turned: m2v })[3]!.sign).toBe('past');
});

test('a dark reading of an unblocked beam, and a first one of a blocked beam, are not ready', () => {
  const unblocked = clicked({ kind: 'floor' }, [1.2e-6, 1.2e-6, 1.2e-6], 1, { floor: null }).at(-1)!;
  expect(unblocked).toMatchObject({ sign: 'block', isReady: false });
  expect(turnSaid(unblocked, { kind: 'floor' }, 'power').insteadOf).toBe('The light has not fallen.');
  const blocked = clicked({ kind: 'floor' }, [1.2e-6, dark, dark, dark], 1, { floor: null }).at(-1)!;
  expect(blocked).toMatchObject({ sign: 'resting', isReady: true });
  const start: WalkStep = { kind: 'stand', why: 'start' };
  const still = clicked(start, [dark, dark, dark]).at(-1)!;
  expect(still).toMatchObject({ sign: 'let-through', isReady: false, isSettled: false });
  expect(turnSaid(still, start, 'power').short).toBe('Let the beam through.');
  expect(clicked(start, [dark, 1.2e-6, 1.2e-6, 1.2e-6]).at(-1)).toMatchObject({
    sign: 'resting',
    isReady: true,
  });
});

const launch = readLaunch(observingLoftLaunch, 'the example');
const click = 1 / 64;

const toTurnAt: readonly TurnSign[] = ['other-way', 'past', 'passed-again', 'falls-on'];

/** A hand that clicks, looks for half a second, and does what it is told; null: it never came to an end. */
function obeys(bench: PracticeBench, screw: Screw, first: 1 | -1, seed: number): TurnNow | null {
  const context: TurnContext = {
    step: sweepOf(screw),
    floor: bench.floor(),
    peak: null,
    noise: null,
    turned: null,
  };
  const look = bench.watcher(seed);
  let turn: Turn = newTurn;
  let t = 1e12;
  const hears = (moments: number): TurnNow => {
    for (let i = 0; i < moments; i += 1) {
      t += 100;
      turn = heardInTurn(turn, context, { t, value: look(), saturated: false });
    }
    return turnNow(turn, context, false);
  };
  let sense: number = first;
  let before = hears(10);
  for (let clicks = 0; clicks < 300; clicks += 1) {
    if (before.sign === 'back-at-peak') {
      const rested = hears(20);
      if (rested.isSettled) return rested;
      before = rested;
    }
    bench.turn(screw, sense * click);
    const now = hears(5);
    // that it falls on is told for a moment only: what stands there afterwards is no new word
    const isNew = now.sign !== before.sign && before.sign !== 'falls-on';
    if (toTurnAt.includes(now.sign) && isNew) sense = -sense;
    before = now;
  }
  return null;
}

/** The most that a screw gives, turned finely over a whole turn about where it stands. */
function mostOf(bench: PracticeBench, screw: Screw): number {
  bench.turn(screw, -0.5);
  let most = 0;
  for (let i = 0; i < 1000; i += 1) {
    bench.turn(screw, 1 / 1000);
    most = Math.max(most, bench.trueShare());
  }
  return most;
}

test('a hand of whole clicks with slack that does as it is told ends within a tenth of the peak of its screw', () => {
  const ends: number[] = [];
  for (let seed = 0; seed < 12; seed += 1) {
    const made = () =>
      practiceBench(hiddenBenchOf(launch, seededUniform(seed), 'steered-by-eye'), seededUniform(seed));
    for (const first of [1, -1] as const) {
      const bench = made();
      const turned: [Screw, number][] = [];
      const turn: PracticeBench['turn'] = (screw, turns) => {
        turned.push([screw, turns]);
        bench.turn(screw, turns);
      };
      for (const screw of [m2h, m2v]) {
        const ended = obeys({ ...bench, turn }, screw, first, 1000 + seed);
        // the truth is told by a bench on which the same was done: slack forgets nothing
        const twin = made();
        for (const [by, turns] of turned) twin.turn(by, turns);
        ends.push(ended === null ? 0 : bench.trueShare() / mostOf(twin, screw));
      }
    }
  }
  expect(ends).toHaveLength(48);
  expect(ends.filter((share) => share < 0.9)).toEqual([]);
});
