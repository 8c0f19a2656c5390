import { gradedModes } from '../fibre/graded-modes.ts';
import { fillRadialTable, fillSpectrumTable, type GuidedMode } from '../fibre/guided-mode.ts';
import { stepModes } from '../fibre/step-modes.ts';
import { laguerreGauss } from './laguerre-gauss.ts';
import { type ModeLadder, modeLadder } from './mode-ladder.ts';
import { type RadialGrid, radialGrid } from './radial-grid.ts';

export type Profile = 'step' | 'graded';

/** All guided modes of one V, in units of the core radius, with the tables that overlaps need, made when first asked. */
export interface ModeSet {
  readonly profile: Profile;
  readonly vNumber: number;
  readonly modes: readonly GuidedMode[];
  readonly highestOrder: number;
  /** Radius, in core radii, beyond which no mode has amplitude worth 1e−9. */
  readonly outerRadius: number;
  ladder(): ModeLadder;
  /** Radial fields at the nodes of a grid, mode by mode. */
  fields(grid: RadialGrid): Float64Array;
  /** Radial spectra at the nodes of a grid over Q = q·a, mode by mode. */
  spectra(grid: RadialGrid): Float64Array;
}

/** Decay lengths after which e^{−x} is below 1e−9. */
const decayLengths = 21;

/**
 * @param rungs of the ladder: with fewer it is built faster, ends sooner and sends more beams the polar road
 * @throws {OutOfRange} where the mode solvers do
 */
export function modeSet(profile: Profile, vNumber: number, rungs = mostRungs): ModeSet {
  return modeSetOf(profile, vNumber, profile === 'step' ? stepModes(vNumber) : gradedModes(vNumber), rungs);
}

/** The fundamental alone, as a set: what of a beam it takes does not depend on the others. */
export function onlyFundamental(set: ModeSet): ModeSet {
  return modeSetOf(
    set.profile,
    set.vNumber,
    set.modes.filter(({ l, m }) => l === 0 && m === 1),
    mostRungs,
  );
}

function modeSetOf(profile: Profile, vNumber: number, modes: readonly GuidedMode[], rungs: number): ModeSet {
  const highestOrder = Math.max(...modes.map(({ l }) => l));
  const slowestDecay = Math.min(...modes.map(({ w }) => w));
  const fieldTables = new Map<string, Float64Array>();
  const spectrumTables = new Map<string, Float64Array>();
  let ladder: ModeLadder | null = null;
  return {
    profile,
    vNumber,
    modes,
    highestOrder,
    outerRadius: 1 + decayLengths / slowestDecay,
    ladder() {
      ladder ??= ladderOf(vNumber, modes, rungs);
      return ladder;
    },
    fields(grid) {
      let table = fieldTables.get(grid.key);
      if (table === undefined) {
        table = new Float64Array(modes.length * grid.nodes.length);
        for (let i = 0; i < modes.length; i += 1) {
          fillRadialTable(
            modes[i]!,
            grid.nodes,
            table.subarray(i * grid.nodes.length, (i + 1) * grid.nodes.length),
          );
        }
        keep(fieldTables, grid.key, table);
      }
      return table;
    },
    spectra(grid) {
      let table = spectrumTables.get(grid.key);
      if (table === undefined) {
        table = new Float64Array(modes.length * grid.nodes.length);
        for (let i = 0; i < modes.length; i += 1) {
          fillSpectrumTable(
            modes[i]!,
            grid.nodes,
            table.subarray(i * grid.nodes.length, (i + 1) * grid.nodes.length),
          );
        }
        keep(spectrumTables, grid.key, table);
      }
      return table;
    },
  };
}

/** A drag across many grids must not fill the memory: the oldest of eight tables goes. */
function keep(tables: Map<string, Float64Array>, key: string, table: Float64Array): void {
  if (tables.size >= 8) {
    const oldest = tables.keys().next();
    if (!oldest.done) tables.delete(oldest.value);
  }
  tables.set(key, table);
}

/**
 * Waist of the ladder's basis in core radii. Between the fundamental's best Gaussian (fewest rungs for a matched beam)
 * and the infinite parabola's (which suits the higher modes); chosen by counting rungs over random beams.
 */
function basisRadiusFor(vNumber: number): number {
  return 0.65 + 1.619 / Math.max(vNumber, 1.2) ** 1.5;
}

const mostRungs = 64;

function ladderOf(vNumber: number, modes: readonly GuidedMode[], rungs: number): ModeLadder {
  const basisRadius = basisRadiusFor(vNumber);
  // the basis reaches out to about w·√(2p + l + 1): beyond that the expansion sees nothing of the modes
  const reach = basisRadius * (Math.sqrt(2 * rungs) + 3);
  const grid = radialGrid([0, 1, 1 + (reach - 1) / 3, reach], rungs > 32 ? [96, 64, 64] : [44, 36, 28]);
  const count = grid.nodes.length;
  const field = new Float64Array(count);
  const bases = new Map<number, Float64Array>();
  const expansions = modes.map((mode) => {
    let basis = bases.get(mode.l);
    if (basis === undefined) {
      basis = laguerreGauss(basisRadius, mode.l, rungs, grid.nodes);
      bases.set(mode.l, basis);
    }
    fillRadialTable(mode, grid.nodes, field);
    const amplitudes = new Float64Array(rungs);
    for (let p = 0; p < rungs; p += 1) {
      let sum = 0;
      for (let i = 0; i < count; i += 1) sum += grid.weights[i]! * field[i]! * basis[p * count + i]!;
      amplitudes[p] = sum;
    }
    return { l: mode.l, m: mode.m, amplitudes };
  });
  return modeLadder(basisRadius, expansions);
}
