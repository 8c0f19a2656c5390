import {
  fillRadialTables,
  fillSpectrumTables,
  type GuidedMode,
  gradedModes,
  stepModes,
} from '../../packages/optics/src/index.ts';

/** One timed job. `goal` in microseconds, or `null` where nobody has set one. */
export interface Timing {
  readonly name: string;
  readonly microseconds: number;
  readonly goal: number | null;
}

/** The least of several runs: the machine's other work only ever adds. */
function least(runs: number, job: (run: number) => unknown): number {
  let best = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs; run++) {
    const start = performance.now();
    job(run);
    best = Math.min(best, performance.now() - start);
  }
  return best * 1000;
}

/** How long mode solving and mode tables take. V differs a little from run to run, so that nothing can be remembered. */
export function benchModes(): Timing[] {
  const nodes = Float64Array.from({ length: 96 }, (_, i) => ((i + 0.5) / 96) * 1.2);
  const tables = (modes: readonly GuidedMode[], fill: typeof fillRadialTables, at: Float64Array) =>
    fill(modes, at, new Float64Array(modes.length * at.length));
  const step100 = stepModes(109.186);
  const graded48 = gradedModes(48);
  const q = nodes.map((x) => x * 100);
  return [
    {
      name: '6 modes of a step, V = 6',
      microseconds: least(200, (run) => stepModes(6 + run * 1e-5)),
      goal: 100,
    },
    {
      name: '1518 modes of a step, V = 109',
      microseconds: least(8, (run) => stepModes(109.18 + run * 1e-5)),
      goal: 50_000,
    },
    {
      name: '2848 modes of a step, V = 150',
      microseconds: least(4, (run) => stepModes(150 + run * 1e-5)),
      goal: null,
    },
    {
      name: '4 modes of a parabola, V = 6',
      microseconds: least(100, (run) => gradedModes(6 + run * 1e-5)),
      goal: null,
    },
    {
      name: '156 modes of a parabola, V = 48',
      microseconds: least(6, (run) => gradedModes(48.01 + run * 1e-5)),
      goal: null,
    },
    {
      name: '650 modes of a parabola, V = 100',
      microseconds: least(3, (run) => gradedModes(100.01 + run * 1e-5)),
      goal: null,
    },
    {
      name: '1518 step fields at 96 radii',
      microseconds: least(3, () => tables(step100, fillRadialTables, nodes)),
      goal: null,
    },
    {
      name: '1518 step spectra at 96 angles',
      microseconds: least(3, () => tables(step100, fillSpectrumTables, q)),
      goal: null,
    },
    {
      name: '156 parabola fields at 96 radii',
      microseconds: least(3, () => tables(graded48, fillRadialTables, nodes)),
      goal: null,
    },
    {
      name: '156 parabola spectra at 96 angles',
      microseconds: least(3, () =>
        tables(
          graded48,
          fillSpectrumTables,
          q.map((x) => x * 0.5),
        ),
      ),
      goal: null,
    },
  ];
}
