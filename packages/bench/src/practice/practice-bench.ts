import { normalFrom, seededUniform } from '@coreward/optics';
import type { Screw, Sense } from '../walk/step.ts';
import { type CardPlaces, type CardSpots, cardSpots } from './card-spots.ts';
import { type HiddenBench, screwIndex } from './hidden-bench.ts';
import { lightAt, whereLightIs } from './peak-shape.ts';

/** A bench that answers like a real one. What it reads is in the meter's unit, floor included; angles are turns. */
export interface PracticeBench {
  /** The meter with the beam blocked. */
  floor(): number;
  /** The meter as it stands. */
  standing(): number;
  /** A look at it with noise of its own: however often it is taken, what is done afterwards comes out alike. */
  watcher(seed: number): () => number;
  /** Blocks the beam before the fibre, or lets it through. */
  block(isBlocked: boolean): void;
  /** Rocks a screw through its peak, stays there, and tells the highest reading seen. */
  sweep(screw: Screw, reach: number | null): number;
  /** Turns a screw until the meter has fallen to `target`. */
  detune(screw: Screw, sense: Sense, target: number): void;
  /** A turn by count, as a hand makes it. */
  countedTurn(screw: Screw, turns: number): void;
  /** Turns the focus thread by count; where it is glued, nothing happens. Whether it could be turned. */
  focus(turns: number): boolean;
  /** Turns the knob by exactly this much; slack decides how far the screw follows. */
  turn(screw: Screw, turns: number): void;
  /** Turns a screw to both places where the meter shows `target` and stands in the middle. */
  middle(screw: Screw, target: number): void;
  /** Forward and reverse spots on two cards; null where the bench does not know its lengths. */
  spots(places: CardPlaces): CardSpots | null;
  /** The truth, for those who judge: share of what the four screws can achieve, the focus left as it is. */
  trueShare(): number;
  /** The same at the highest place that the last sweep went through. */
  passedShare(): number;
  /** Share of the light that the focus leaves. */
  trueFocus(): number;
  /** How far a screw stands from its place at the peak of all four, turns; positive beyond it. */
  trueOffset(screw: Screw): number;
}

/** A sweep that is given no limits looks this far where nothing is seen, turns. */
const reachInTheDark = 0.25;

/**
 * A simulated bench. All chance comes from `random`, uniform in [0, 1): the same stream and the same acts give the same
 * readings. Hands, noise and slack are assumptions of ours, no source.
 */
export function practiceBench(hidden: HiddenBench, random: () => number): PracticeBench {
  const screws = [...hidden.start];
  // the knob stands somewhere within the slack
  const knobs = hidden.lash.map((width, i) => screws[i]! + (random() - 0.5) * width);
  let source = 0;
  let passed = 0;
  let blocked = false;
  const normal = () => normalFrom(random);
  const act = () => {
    source += hidden.drift * normal();
  };
  const distance = () => {
    let q = 0;
    hidden.curvature.forEach((row, i) => {
      row.forEach((h, j) => {
        q += h * screws[i]! * screws[j]!;
      });
    });
    return q;
  };
  let defocus = hidden.focus?.defocus ?? 0;
  /** What the focus leaves of the light. @source 1/(1 + (Δz/2z_R)²), matched Gaussians on the axis */
  const inFocus = () => 1 / (1 + (defocus / (2 * (hidden.focus?.rayleighRange ?? 1))) ** 2);
  const lightFrom = (q: number) => inFocus() * lightAt(hidden.shape, q);
  const whereIs = (light: number) => whereLightIs(hidden.shape, light / inFocus());
  const light = () => lightFrom(distance());
  const shown = (net: number) => Math.max(net, 0.3 * hidden.floor) + hidden.floor;
  const dark = (chance: () => number) => hidden.floor * (1 + 0.1 * chance()) * hidden.peakReading;
  const read = (chance: () => number) => {
    if (blocked) return dark(chance);
    const net = light() * Math.exp(source + hidden.noise * chance()) + 0.25 * hidden.floor * chance();
    return shown(net) * hidden.peakReading;
  };

  /** Along one screw q is a parabola: its lowest place, the q there, and its curvature. */
  const parabola = (i: number) => {
    const h = hidden.curvature[i]![i]!;
    const slope = hidden.curvature[i]!.reduce((sum, hij, j) => sum + hij * screws[j]!, 0);
    const best = screws[i]! - slope / h;
    return { best, q: distance() - slope ** 2 / h, h };
  };
  const follow = (i: number) => {
    const slack = hidden.lash[i]! / 2;
    screws[i] = Math.min(knobs[i]! + slack, Math.max(knobs[i]! - slack, screws[i]!));
  };
  /** Puts a screw somewhere by looking at the meter; the knob has last been turned in `sense`. */
  const put = (i: number, place: number, sense: number) => {
    screws[i] = place;
    knobs[i] = place + (sense * hidden.lash[i]!) / 2;
  };
  const turnKnob = (i: number, turns: number) => {
    knobs[i]! += turns;
    follow(i);
  };

  return {
    floor: () => dark(normal),
    standing: () => read(normal),
    watcher(seed) {
      const own = seededUniform(seed);
      return () => read(() => normalFrom(own));
    },
    block(isBlocked) {
      blocked = isBlocked;
    },
    sweep(screw, reach) {
      act();
      const i = screwIndex(screw);
      const { best, q, h } = parabola(i);
      const looks = reach ?? (light() > hidden.floor ? Number.POSITIVE_INFINITY : reachInTheDark);
      const [low, high] = [screws[i]! - looks, screws[i]! + looks];
      const top = Math.min(high, Math.max(low, best));
      const lowestQ = q + h * (top - best) ** 2;
      const most = lightFrom(lowestQ);
      passed = lightAt(hidden.shape, lowestQ);
      // the hand takes any place for the peak that the meter cannot tell from it
      const unseen = Math.min(0.6, Math.max(0.01, Math.hypot(hidden.noise, (0.25 * hidden.floor) / most)));
      const edge = whereIs((1 - unseen) * most);
      const half = Math.sqrt(Math.max(0, edge - q) / h);
      const [from, to] = [Math.max(low, best - half), Math.min(high, best + half)];
      put(i, from + random() * (to - from) + hidden.hands.finger * normal(), random() < 0.5 ? -1 : 1);
      const seen = 0.8 + 0.7 * normal();
      const net =
        most * Math.exp(source + hidden.noise * seen) + 0.25 * hidden.floor * (0.8 + 0.7 * normal());
      return shown(net) * hidden.peakReading;
    },
    detune(screw, sense, target) {
      act();
      const i = screwIndex(screw);
      const { best, q, h } = parabola(i);
      const net = (target / hidden.peakReading - hidden.floor) / Math.exp(source);
      const away = Math.sqrt(Math.max(0, whereIs(net) - q) / h);
      // who stands beyond that place already does not turn
      const angle = Math.max(0, sense * (best - screws[i]!) + away);
      put(i, screws[i]! + sense * angle * (1 + hidden.hands.detuneFactor * normal()), sense);
    },
    countedTurn(screw, turns) {
      act();
      const { countFactor, countAdds } = hidden.hands;
      const adds = Math.min(countAdds, Math.max(0.003, 0.4 * Math.abs(turns)));
      turnKnob(screwIndex(screw), turns * (1 + countFactor * normal()) + adds * normal());
    },
    focus(turns) {
      const { focus } = hidden;
      if (focus === null) return false;
      act();
      defocus += turns * focus.advance * (1 + hidden.hands.countFactor * normal());
      const sideways = focus.runOut * Math.sqrt(Math.abs(turns));
      const [horizontal, vertical] = [sideways * normal(), sideways * normal()];
      focus.aim.forEach((aim, i) => {
        const shift = aim * (i < 2 ? horizontal : vertical);
        screws[i]! += shift;
        knobs[i]! += shift;
      });
      return true;
    },
    turn(screw, turns) {
      turnKnob(screwIndex(screw), turns);
    },
    middle(screw, target) {
      act();
      const i = screwIndex(screw);
      const { best, q, h } = parabola(i);
      const net = (target / hidden.peakReading - hidden.floor) / Math.exp(source);
      const half = Math.sqrt(Math.max(0, whereIs(net) - q) / h);
      const error =
        half * hidden.hands.detuneFactor * normal() * Math.SQRT1_2 + hidden.hands.finger * normal();
      put(i, best + error, random() < 0.5 ? -1 : 1);
    },
    spots: (places) => (hidden.screws === null ? null : cardSpots(hidden.screws, screws, places)),
    trueShare: () => lightAt(hidden.shape, distance()),
    trueFocus: inFocus,
    trueOffset: (screw) => screws[screwIndex(screw)]!,
    passedShare: () => passed,
  };
}
