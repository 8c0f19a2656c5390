import { gradedModes } from '../fibre/graded-modes.ts';
import { fillRadialTables, fillSpectrumTables, type GuidedMode } from '../fibre/guided-mode.ts';
import { orientations } from '../fibre/lp-mode.ts';
import { stepModes } from '../fibre/step-modes.ts';
import { type HermiteModes, hermiteModes, hermiteModesThroughPupil } from './hermite-modes.ts';
import { laguerreGauss } from './laguerre-gauss.ts';
import { type ModeLadder, modeLadder } from './mode-ladder.ts';
import type { Pupil } from './pupil.ts';
import { type RadialGrid, radialGrid } from './radial-grid.ts';

/** How the index falls from the axis to the cladding: at once, or as a parabola. */
export type Profile = 'step' | 'graded';

/** Whether a mode falls off in the cladding at least as fast as this w; LP01 counts as if it always did. */
export const decays = ({ l, m, w }: Pick<GuidedMode, 'l' | 'm' | 'w'>, leastDecay: number): boolean =>
  w >= leastDecay || (l === 0 && m === 1);

/** All guided modes of one V, in units of the core radius, with the tables that overlaps need, made when first asked. */
export interface ModeSet {
  readonly profile: Profile;
  readonly vNumber: number;
  readonly modes: readonly GuidedMode[];
  readonly highestOrder: number;
  /** The least w of its modes. */
  readonly slowestDecay: number;
  /** Radius, in core radii, beyond which no mode has amplitude that counts: e⁻²¹ of it at fineness 1. */
  outerRadius(fineness: number): number;
  /** Power of all modes together, at most, beyond a transverse wave number Q = q·a well above V. */
  tailBeyond(q: number): number;
  ladder(): ModeLadder;
  /** The same with so many rungs that only beams quite unlike the modes fall off. */
  longLadder(): ModeLadder;
  /** The modes in Hermite-Gauss products of total orders up to `orders` or more. */
  hermite(orders: number): HermiteModes;
  /** The same as they are met through a lens's pupil, whose axis is the fibre's; `waveNumber` is k·a. */
  hermiteThroughPupil(orders: number, pupil: Pupil, waveNumber: number): HermiteModes;
  /** Radial fields at the nodes of a grid, mode by mode. */
  fields(grid: RadialGrid): Float64Array;
  /** Radial spectra at the nodes of a grid over Q = q·a, mode by mode. */
  spectra(grid: RadialGrid): Float64Array;
}

/** Decay lengths after which e^{−x} is below 1e−9. */
const decayLengths = 21;

/**
 * @param rungs of the ladder: with fewer it is built faster, ends sooner and sends more beams the polar road
 * @param leastDecay modes other than LP01 with a smaller w are left out: they reach so far out that the first bend takes them,
 *   and hold next to nothing of a spot in the core
 * @throws {OutOfRange} where the mode solvers do
 */
export function modeSet(profile: Profile, vNumber: number, rungs = usualRungs, leastDecay = 0): ModeSet {
  return modeSetOf(profile, vNumber, laddersFor(profile, vNumber, rungs, leastDecay));
}

/** The fundamental alone, as a set: what of a beam it takes does not depend on the others. */
export function onlyFundamental(set: ModeSet): ModeSet {
  const known = fundamentals.get(set.modes);
  const alone = set.modes.filter(({ l, m }) => l === 0 && m === 1);
  const made = known ?? ladders(set.vNumber, alone, usualRungs);
  if (known === undefined) fundamentals.set(set.modes, made);
  return modeSetOf(set.profile, set.vNumber, made);
}

/** Modes with the two ladders to them: small, but what takes longest of a fibre that is asked for a few hundred overlaps. */
type Ladders = Pick<ModeSet, 'modes' | 'ladder' | 'longLadder'>;

/**
 * Those of the fibres that were asked for last. While a hand turns a lens or a mirror every forecast asks for the same
 * dozen fibres, and to make them anew took a seventh of it.
 */
const lastLadders = new Map<string, Ladders>();
const mostLadders = 32;
const fundamentals = new WeakMap<readonly GuidedMode[], Ladders>();

function laddersFor(profile: Profile, vNumber: number, rungs: number, leastDecay: number): Ladders {
  const key = `${profile} ${vNumber} ${rungs} ${leastDecay}`;
  const known = lastLadders.get(key);
  if (known !== undefined) return known;
  const all = profile === 'step' ? stepModes(vNumber) : gradedModes(vNumber);
  const modes = leastDecay === 0 ? all : all.filter((mode) => decays(mode, leastDecay));
  const made = ladders(vNumber, modes, rungs);
  keep(lastLadders, key, made, mostLadders);
  return made;
}

function ladders(vNumber: number, modes: readonly GuidedMode[], rungs: number): Ladders {
  let ladder: ModeLadder | null = null;
  let longLadder: ModeLadder | null = null;
  return {
    modes,
    ladder() {
      ladder ??= ladderOf(vNumber, modes, rungs);
      return ladder;
    },
    longLadder() {
      longLadder ??= ladderOf(vNumber, modes, mostRungs);
      return longLadder;
    },
  };
}

function modeSetOf(profile: Profile, vNumber: number, { modes, ladder, longLadder }: Ladders): ModeSet {
  const highestOrder = Math.max(...modes.map(({ l }) => l));
  const edges = modes.reduce((sum, mode) => sum + orientations(mode) * mode.edgeAmplitude ** 2, 0);
  const slowestDecay = Math.min(...modes.map(({ w }) => w));
  const fieldTables = new Map<string, Float64Array>();
  const spectrumTables = new Map<string, Float64Array>();
  const hermite = new Map<number, HermiteModes>();
  const throughPupil = new Map<string, HermiteModes>();
  return {
    profile,
    vNumber,
    modes,
    highestOrder,
    slowestDecay,
    outerRadius: (fineness) => 1 + (decayLengths * fineness) / slowestDecay,
    // the jump of R'' at the core's edge, V²R(1), makes the spectrum fall as V²R(1)·√(2/π)·Q^−3.5
    tailBeyond: (q) => (edges * vNumber ** 4) / (2.5 * Math.PI * q ** 5),
    ladder,
    longLadder,
    hermite(orders) {
      const held = heldOrders.find((some) => some >= orders) ?? orders;
      let known = hermite.get(held);
      if (known === undefined) {
        known = hermiteModes(vNumber, modes, held);
        hermite.set(held, known);
      }
      return known;
    },
    hermiteThroughPupil(orders, pupil, waveNumber) {
      const held = heldOrders.find((some) => some >= orders) ?? orders;
      const { stop, sphericalAberration, aberrationAt } = pupil;
      const key = [held, stop, sphericalAberration, aberrationAt, waveNumber].join(':');
      let known = throughPupil.get(key);
      if (known === undefined) {
        known = hermiteModesThroughPupil(vNumber, modes, held, pupil, waveNumber);
        keep(throughPupil, key, known);
      }
      return known;
    },
    fields(grid) {
      let table = fieldTables.get(grid.key);
      if (table === undefined) {
        table = new Float64Array(modes.length * grid.nodes.length);
        fillRadialTables(modes, grid.nodes, table);
        keep(fieldTables, grid.key, table);
      }
      return table;
    },
    spectra(grid) {
      let table = spectrumTables.get(grid.key);
      if (table === undefined) {
        table = new Float64Array(modes.length * grid.nodes.length);
        fillSpectrumTables(modes, grid.nodes, table);
        keep(spectrumTables, grid.key, table);
      }
      return table;
    },
  };
}

/** A drag across many grids must not fill the memory: the oldest of eight tables goes. */
function keep<T>(tables: Map<string, T>, key: string, table: T, most = 8): void {
  if (tables.size >= most) {
    const oldest = tables.keys().next();
    if (!oldest.done) tables.delete(oldest.value);
  }
  tables.set(key, table);
}

/**
 * Waist of the ladder's basis in core radii: nearly the fundamental's best Gaussian. Counted over 600 random beams at
 * V = 2.4, 6 and 12, waists from 0.75 to 1.15 of it need as many rungs within a quarter, others more.
 */
function basisRadiusFor(vNumber: number): number {
  return 0.65 + 1.619 / Math.max(vNumber, 1.2) ** 1.5;
}

/** Sizes in which Hermite-Gauss tables are made. */
const heldOrders = [48, 96, 192];

const usualRungs = 48;
const mostRungs = 96;

function ladderOf(vNumber: number, modes: readonly GuidedMode[], rungs: number): ModeLadder {
  const basisRadius = basisRadiusFor(vNumber);
  // the basis reaches out to about w·√(2p + l + 1): beyond that the expansion sees nothing of the modes
  const reach = basisRadius * (Math.sqrt(2 * rungs) + 3);
  const grid = radialGrid([0, 1, 1 + (reach - 1) / 3, reach], rungs > 32 ? [96, 64, 64] : [44, 36, 28]);
  const count = grid.nodes.length;
  const fields = new Float64Array(modes.length * count);
  fillRadialTables(modes, grid.nodes, fields);
  const bases = new Map<number, Float64Array>();
  const expansions = modes.map((mode, which) => {
    let basis = bases.get(mode.l);
    if (basis === undefined) {
      basis = laguerreGauss(basisRadius, mode.l, rungs, grid.nodes);
      bases.set(mode.l, basis);
    }
    const field = fields.subarray(which * count, (which + 1) * count);
    for (let i = 0; i < count; i += 1) field[i] = field[i]! * grid.weights[i]!;
    const amplitudes = new Float64Array(rungs);
    for (let p = 0; p < rungs; p += 1) {
      let sum = 0;
      for (let i = 0; i < count; i += 1) sum += field[i]! * basis[p * count + i]!;
      amplitudes[p] = sum;
    }
    return { l: mode.l, m: mode.m, amplitudes };
  });
  return modeLadder(basisRadius, expansions);
}
