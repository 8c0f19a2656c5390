import type { FacetBeam } from '../beam/facet-beam.ts';
import { type AxisState, axisAmplitudes, axisMatrix, axisStates } from './axis-state.ts';
import type { HermiteModes, HermiteTable } from './hermite-modes.ts';
import { blocksOf, coherentPower, powerOf } from './hermite-power.ts';
import type { ModeSet } from './mode-set.ts';
import type { Pupil } from './pupil.ts';

/*
 * The road for partly coherent beams: modes and beam in Hermite-Gauss products along the beam's own axes. A mode's power is
 *   Σ F(nx, ny) ρx(nx, mx) ρy(ny, my) F(mx, my),
 * two products of small matrices and a trace, whatever the M², offset, tilt, defocus and azimuth. What limits it is only
 * how much of a mode lies beyond the orders held; no beam can make it take longer.
 */

/** Total orders tried in turn. */
const series = [16, 24, 32, 48, 64, 96, 128, 192] as const;

/**
 * The same with as many orders as it takes until the last step of the series has changed no power by more than three times
 * `tolerance`, less where little is guided; or until the series ends: then what is left is of the size of the last step.
 */
export function convergedHermitePowers(
  set: ModeSet,
  beam: FacetBeam,
  waveNumber: number,
  tolerance: number,
  pupil: Pupil | null = null,
): HermitePowers {
  const fastest = set.modes.reduce((most, { u }) => Math.max(most, u), 0);
  const enough = 12 + fastest;
  let step = Math.max(
    0,
    Math.min(
      series.length - 2,
      series.findIndex((orders) => orders >= enough),
    ),
  );
  const modesWith = (orders: number) =>
    pupil === null ? set.hermite(orders) : set.hermiteThroughPupil(orders, pupil, waveNumber);
  const powersOf = (orders: number): HermitePowers =>
    hermitePowers(modesWith(orders), beam, waveNumber, orders, set.modes.length, tolerance);
  let before = powersOf(series[step]!);
  for (;;) {
    step += 1;
    const now = powersOf(series[step]!);
    const guided = now.powers.reduce((sum, power) => sum + power, 0);
    const change = now.powers.reduce(
      (most, power, i) => Math.max(most, Math.abs(power - before.powers[i]!)),
      0,
    );
    // every step leaves a tenth or less of what the one before left
    if (change <= 3 * tolerance * Math.sqrt(guided) || step === series.length - 1) return now;
    before = now;
  }
}

/** What hermitePowers finds. */
export interface HermitePowers {
  /** Both orientations together, mode by mode. */
  readonly powers: Float64Array;
  /** Of these, what lies in cos lφ, with φ from the beam's own x'. */
  readonly cosinePowers: Float64Array;
}

/**
 * Power in each mode.
 *
 * @param beam lengths in core radii
 * @param waveNumber k·a
 * @param orders total orders to use, even, no more than `modes` hold
 * @param tolerance what of the beam may be left out, as a share of what these orders see of it
 */
export function hermitePowers(
  modes: HermiteModes,
  beam: FacetBeam,
  waveNumber: number,
  orders: number,
  modeCount: number,
  tolerance = 1e-12,
): HermitePowers {
  const powers = new Float64Array(modeCount);
  const cosinePowers = new Float64Array(modeCount);
  const add = ({ mode, oddY }: HermiteTable, power: number): void => {
    powers[mode] = powers[mode]! + power;
    if (oddY === 0) cosinePowers[mode] = power;
  };
  const coherent = beam.m2X === 1 && beam.m2Y === 1;
  const half = orders / 2;
  for (const { basisRadius, tables } of modes.groups) {
    const states = axisStates(beam, waveNumber, basisRadius);
    if (coherent) {
      const alongX = axisAmplitudes(states.x, orders);
      const alongY = axisAmplitudes(states.y, orders);
      for (const table of tables) add(table, coherentPower(table, half, alongX, alongY));
      continue;
    }
    // of a round, centred beam cos lφ and sin lφ take alike
    const round = alike(states.x, states.y);
    const alongX = axisMatrix(states.x, orders);
    const alongY = round ? alongX : axisMatrix(states.y, orders);
    const blocksX = blocksOf(alongX, orders, tolerance);
    const blocksY = round ? blocksX : blocksOf(alongY, orders, tolerance);
    let last = { mode: -1, power: 0 };
    for (const table of tables) {
      const power =
        round && table.mode === last.mode
          ? last.power
          : powerOf(table, half, blocksX[table.oddX], blocksY[table.oddY], tolerance);
      last = { mode: table.mode, power };
      add(table, power);
    }
  }
  return { powers, cosinePowers };
}

const alike = (x: AxisState, y: AxisState): boolean =>
  x.tRe === y.tRe &&
  x.tIm === y.tIm &&
  x.s === y.s &&
  x.betaRe === 0 &&
  x.betaIm === 0 &&
  y.betaRe === 0 &&
  y.betaIm === 0;
