/**
 * The fifth screw. On the axis 1/η grows by the square of the defocus, so peaks at three places of the thread give the best
 * one by a parabola. A thread's run-out shifts the lens sideways, so M2 is peaked again before anything is compared.
 */
import type { Known } from './known.ts';
import { peakNearMirror } from './near-mirror.ts';
import { type Asking, ask, isSpent, notice, type Trail } from './trail.ts';

/** Less than this of the forecast is worth a look at the focus. @source 1/(1 + (Δz/2z_R)²) at 0.8 Rayleigh ranges: our choice */
const worthALook = 0.85;
/** Less than this is no focus that is a little off. @source nine Rayleigh ranges: our choice */
const beyondFocus = 0.05;
/** Less than this of the forecast, the walk done, is said. @source our choice */
const farBelow = 0.6;
/** A better place that is nearer than this is not gone to, Rayleigh ranges. */
const nearEnough = 0.2;
/** The light must have fallen by more (ln) before a step is undone: what a peak scatters by. */
const notWorse = 0.02;
/** Farther than this from where it began the thread is not turned, Rayleigh ranges. */
const farthest = 6;

/** A peak at a place of the thread, Rayleigh ranges from where it stood; light without the floor. */
interface Focused {
  readonly place: number;
  readonly peak: number;
}

/** The share of the forecast that the last peak is, where that is too little; null: it is enough, or nothing was forecast. */
export function belowForecast({ peak }: Trail, { forecastPeak }: Pick<Known, 'forecastPeak'>): number | null {
  if (peak === null || forecastPeak === null || !(forecastPeak > 0)) return null;
  const share = peak / forecastPeak;
  return share < farBelow ? share : null;
}

/**
 * Asks for turns of the focus thread where defocus can explain what is missing, and keeps the best place. Whether the thread
 * stands elsewhere than before.
 *
 * @source P/P₀ = 1/(1 + (Δz/2z_R)²) for matched Gaussians on the axis: overlap of two Gaussian beams, derived here
 */
export function* seekFocus(trail: Trail, known: Known): Asking<boolean> {
  const { focusThread, forecastPeak, wavelength, modeRadius } = known;
  if (focusThread === null || forecastPeak === null || trail.peak === null) return false;
  const share = trail.peak / forecastPeak;
  if (!(share < worthALook && share > beyondFocus)) return false;
  notice(trail, { id: 'focus-may-be-off', values: { share } });
  const rayleighRange = (Math.PI * modeRadius ** 2) / wavelength;
  const tried: Focused[] = [{ place: 0, peak: trail.peak }];
  let at = 0;
  const goTo = function* (place: number): Asking<Focused | null> {
    const turns = ((place - at) * rayleighRange) / focusThread;
    if (isSpent(trail) || (yield* ask(trail, { kind: 'focus', turns })).outcome !== 'did') return null;
    at = place;
    yield* peakNearMirror(trail, 'after-focus');
    const here = { place, peak: trail.peak ?? 0 };
    tried.push(here);
    return here;
  };
  const first = yield* goTo(1);
  if (first === null) return false;
  const second = yield* goTo(first.peak > tried[0]!.peak ? 2 : -1);
  if (second !== null) {
    const wanted = vertexOf(tried);
    if (Math.abs(wanted - bestOf(tried).place) > nearEnough) yield* goTo(wanted);
  }
  const best = bestOf(tried);
  if (at !== best.place && Math.log(best.peak / (trail.peak ?? 0)) > notWorse) yield* goTo(best.place);
  const gained = trail.peak / tried[0]!.peak - 1;
  if (at === 0) notice(trail, { id: 'focus-put-back' });
  else if (gained > notWorse) notice(trail, { id: 'focus-better', values: { gained } });
  return at !== 0;
}

const bestOf = (tried: readonly Focused[]): Focused =>
  tried.reduce((best, here) => (here.peak > best.peak ? here : best));

/** Where 1/P is least by a parabola through the last three places; where it opens downwards, onward beyond the best. */
function vertexOf(tried: readonly Focused[]): number {
  const [a, b, c] = [...tried].sort((x, y) => x.place - y.place) as [Focused, Focused, Focused];
  const slope = (x: Focused, y: Focused) => (1 / y.peak - 1 / x.peak) / (y.place - x.place);
  const bend = (slope(b, c) - slope(a, b)) / (c.place - a.place);
  const limited = (place: number) => Math.min(farthest, Math.max(-farthest, place));
  if (!(bend > 0)) return limited(2 * bestOf(tried).place);
  return limited((a.place + b.place) / 2 - slope(a, b) / (2 * bend));
}
