import { expect, test } from 'vitest';
import { observingLoftLaunch } from '../example/example-texts.ts';
import { readLaunch } from '../launch/read-launch.ts';
import { practiceBench } from '../practice/practice-bench.ts';
import type { Screw, Sense, WalkAxis } from '../walk/step.ts';
import {
  learnedSenses,
  liveTurns,
  liveTurnWords,
  movingBeam,
  offsetsByCamera,
  type SteerCard,
} from './live-card.ts';
import { unsteeredBench } from './practised.ts';
import { type ScrewSenses, screwKey } from './senses.ts';
import { steerLayout, usualCards } from './steer-layout.ts';
import { steerPlan } from './steer-plan.ts';

const launch = readLaunch(observingLoftLaunch, 'example');
const plan = steerPlan(launch, usualCards(steerLayout(launch)));
const doubt = { x: 1e-5, y: 1e-5 };

/** Offset on a card of a simulated bench, whose geometry is its own (practice/card-spots.ts). */
function offsetOn(bench: ReturnType<typeof practiceBench>, card: SteerCard) {
  const { forward, reverse } = bench.spots(plan.cards)![card];
  return { x: forward.x - reverse.x, y: forward.y - reverse.y };
}

test.each([1, 2, 3, 4, 5, 6])(
  'bench %i: turned as it is said, live and card after card, both cards come together, whichever way the screws go',
  (seed) => {
    const bench = practiceBench(unsteeredBench(launch, seed), () => 0.5);
    const ways = new Map<string, Sense>();
    for (const mirror of ['M1', 'M2'] as const)
      for (const [rank, axis] of (['horizontal', 'vertical'] as const).entries())
        ways.set(screwKey({ mirror, axis }), (seed + rank + (mirror === 'M1' ? 1 : 0)) % 2 === 0 ? 1 : -1);
    const senses: ScrewSenses = ways;
    const first = { near: offsetOn(bench, 'near'), far: offsetOn(bench, 'far') };
    for (let round = 0; round < 40; round++)
      for (const card of ['near', 'far'] as const)
        for (const axis of ['horizontal', 'vertical'] as const) follow(card, axis);
    for (const card of ['near', 'far'] as const) {
      const left = offsetOn(bench, card);
      expect(Math.hypot(left.x, left.y)).toBeLessThan(0.02 * Math.hypot(first[card].x, first[card].y) + 1e-4);
    }

    /** Turns a screw by small steps as long as it is told the same way. */
    function follow(card: SteerCard, axis: WalkAxis): void {
      const told = () =>
        liveTurns({ offset: offsetOn(bench, card), uncertainty: doubt }, card, plan, senses).find(
          (one) => one.axis === axis,
        )!.turn;
      const begun = told();
      for (let step = 0; step < 4000; step++) {
        const now = told();
        if (now === null || now.way !== begun?.way) return;
        const screw: Screw = now.screw;
        bench.turn(screw, ways.get(screwKey(screw))! * now.way * 0.002);
      }
    }
  },
);

test('on the card before the lens the laser’s spot moves, on the one behind M1 the reverse spot', () => {
  expect(movingBeam(plan, 'near')).toBe('forward');
  expect(movingBeam(plan, 'far')).toBe('reverse');
  const [horizontal, vertical] = liveTurns(
    { offset: { x: 0.42e-3, y: -1e-6 }, uncertainty: { x: 3e-5, y: 3e-5 } },
    'near',
    plan,
    learnedSenses([]),
  );
  expect(liveTurnWords(horizontal, 'forward')).toBe(
    '0.420 mm ± 0.030 mm to the right. M1, horizontal screw, back, against the way you learned as +: the laser’s spot goes left.',
  );
  expect(liveTurnWords(vertical, 'forward')).toBe('In height they lie together, within 0.03 mm.');
  const [far] = liveTurns({ offset: { x: 1e-3, y: 0 }, uncertainty: doubt }, 'far', plan, learnedSenses([]));
  expect(far.turn).toMatchObject({ screw: { mirror: 'M2' }, way: 1, goes: 'right' });
});

test('the senses that were learned last count', () => {
  const sense = (to: 'left' | 'right') =>
    ({
      step: { kind: 'sense', screw: { mirror: 'M1', axis: 'horizontal' } },
      answer: { outcome: 'went', to },
      remarks: [],
    }) as const;
  expect(learnedSenses([sense('left'), sense('right')]).get('M1 horizontal')).toBe(1);
});

test('the doubt of two cards is the root of the mean square of all four offsets’ (JCGM 100, 5.1.2, for a like share of each)', () => {
  const card = (x: number, y: number) => ({
    offset: { x: 1e-3, y: -2e-3 },
    uncertainty: { x, y },
    bring: { horizontal: 'left', vertical: 'up' } as const,
    distance: 0,
    answers: [] as never,
  });
  // √((3² + 4² + 0 + 0)/4) = 2.5
  expect(offsetsByCamera(card(3e-5, 4e-5), card(0, 0)).readingError).toBeCloseTo(2.5e-5, 12);
});
