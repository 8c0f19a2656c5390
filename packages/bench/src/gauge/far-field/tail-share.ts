/** How well the tail is known, as a share of it: LP01 with V from 1.8 to 4 keeps to it within 0.65 (computed). */
export const tailDoubt = 0.5;

/** Steepness of a tail: 1 falls as an exponential, 2 as a Gaussian, a filled fibre more steeply than any mode. */
const steepnesses = [1.2, 6] as const;

/**
 * A tail less steep than this grows flatter on its way out, by two thirds of what it lacks: LP01 with V of 1.4 to 2.6 from a
 * fifth of its peak to a hundredth (computed from its closed form).
 */
const straight = { steepness: 1.87, share: 0.65 };

/** Where a tail is fainter than this share of the peak its first dark ring is near, and it falls as it began. */
const nearRing = 0.002;

/** More light than this in the wings, as a share of the peak, and they are no dark. */
const mostLight = 0.1;

const turns = 30;

/** So many readings of the wings tell their mean. */
const looked = 256;

/**
 * Light in the wings as a share of the peak, where all of it was taken for dark. From half of the peak to a fifth of it a mode
 * falls as 2^(−rᵠ), r in half widths, and goes on like that, or somewhat flatter, until its first dark ring: q is 1.6 for LP01 with
 * V of 1.5, 1.8 with 2.4, and 2 with 4.
 *
 * @param distanceAt from the centre to where the light falls to a share of its peak, sin θ; null where it was not read
 * @param wings distances of the readings there from the centre, sin θ
 * @source computed from the closed form of LP01; as a law for the tail: no source
 */
export function tailShare(distanceAt: (share: number) => number | null, wings: readonly number[]): number {
  const stride = Math.max(1, Math.floor(wings.length / looked));
  const some = wings.filter((_, i) => i % stride === 0);
  let tail = 0;
  for (let turn = 0; turn < turns; turn++) {
    // with that light given back the peak is higher by as much, and so is what was read as half and fifth of it
    const [half, fifth] = [distanceAt((1 - tail) / 2), distanceAt((1 - 4 * tail) / 5)];
    if (half === null || fifth === null || !(fifth > half)) return tail;
    const measured = Math.log(Math.log(5) / Math.LN2) / Math.log(fifth / half);
    const near = Math.min(Math.max(measured, steepnesses[0]), steepnesses[1]);
    const steepness = near - straight.share * Math.max(0, straight.steepness - near);
    const falling = (distance: number, power: number): number => 2 ** -((distance / half) ** power);
    const mean =
      some.reduce((sum, distance) => {
        const begun = falling(distance, near);
        const flatter = falling(distance, steepness);
        return sum + begun + ((flatter - begun) * flatter) / (flatter + nearRing);
      }, 0) / some.length;
    const next = Math.min(mean * (1 + tail), mostLight);
    if (Math.abs(next - tail) < 1e-6) return next;
    tail = next;
  }
  return tail;
}
