import { studentQuantile } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { type GaugeAnswer, undetermined } from '../answer.ts';
import type { ColumnSpec, Gauge, GaugeResult, Readings, SettingSpec } from '../gauge.ts';
import { column, derived, type Known, meanOf } from '../known.ts';

const repeats: SettingSpec = {
  name: 'power repeats to',
  dimension: 'fraction',
  needed: false,
  what: 'standard uncertainty of one ratio, as a share; used for fewer than four pairs; left out: 3 %',
};

const powerColumn = (name: string, what: string, otherNames: readonly string[]): ColumnSpec => ({
  name,
  dimension: 'reading',
  needed: true,
  otherNames,
  what,
});

/** Mean logarithm of second over first, pair by pair. */
function logRatio(readings: Readings, first: string, second: string, gauge: string): Known {
  const [a, b] = [column(readings, first), column(readings, second)];
  if ([...a, ...b].some((p) => !(p > 0))) {
    throw new Refusal({
      where: `${gauge} readings`,
      what: 'a reading is not above zero',
      mend: 'Take the dark reading off, and leave out where no light was.',
    });
  }
  const stated = readings.settings['power repeats to']?.value ?? 0.03;
  return meanOf(
    'readings',
    a.map((p, i) => Math.log(b[i]! / p)),
    stated,
  );
}

const plain = (answers: readonly GaugeAnswer[], remarks: readonly string[] = []): GaugeResult => ({
  answers,
  remarks,
  curves: [],
});

/** The gauge that reads power without and with a joint. */
export const substitution: Gauge = {
  name: 'substitution',
  otherNames: [],
  title: 'substitution',
  answers: 'loss of a joint or a connector pair',
  needs: 'any steady detector; the joint taken out and put back for each pair of readings',
  takes: 'table',
  columns: [
    powerColumn('without', 'power without the joint', ['reference', 'before', 'without joint', 'straight']),
    powerColumn('with', 'power with it', ['joint', 'after', 'behind', 'with joint']),
  ],
  settings: [repeats],
  measure: (readings) => {
    const log = logRatio(readings, 'without', 'with', 'substitution');
    const gain = log.value > 2 * log.uncertainty;
    return plain(
      [
        derived({ quantity: 'loss_nepers' }, [log], (l) => -l!),
        derived({ quantity: 'transmission', shape: 'positive' }, [log], (l) => Math.exp(l!)),
      ],
      gain
        ? [
            'More light arrives with the joint than without it: the reference itself loses some, or the launch has moved.',
          ]
        : [],
    );
  },
};

/** The gauge that reads power before and behind a part. */
export const beforeAndAfter: Gauge = {
  name: 'before-and-after',
  otherNames: ['before-and-behind'],
  title: 'before and after',
  answers: 'transmission or reflectance of a mirror, a lens or a filter',
  needs: 'any steady detector that catches the whole beam in both places',
  takes: 'table',
  columns: [
    powerColumn('before', 'power before the part', ['in', 'input', 'without']),
    powerColumn('behind', 'power behind it', ['after', 'out', 'output', 'with']),
  ],
  settings: [repeats],
  measure: (readings) => {
    const log = logRatio(readings, 'before', 'behind', 'before-and-after');
    return plain([derived({ quantity: 'transmission', shape: 'positive' }, [log], (l) => Math.exp(l!))]);
  },
};

/** The gauge that strips the cladding and sees what is gone. */
export const claddingLight: Gauge = {
  name: 'cladding-light',
  otherNames: [],
  title: 'light in the cladding',
  answers: 'share of the reading that travels in the cladding',
  needs: 'a steady detector at the far end; a tight coil or a drop of oil on bare cladding',
  takes: 'table',
  columns: [
    powerColumn('before', 'power as it is', ['without', 'bare']),
    powerColumn('after', 'power with the coil or the drop', ['with', 'coil', 'drop', 'stripped']),
  ],
  settings: [repeats],
  measure: (readings) => {
    const log = logRatio(readings, 'before', 'after', 'cladding-light');
    const share = 1 - Math.exp(log.value);
    // once in forty by chance, by as many readings as its doubt was learnt from
    const byChance = studentQuantile(0.975, log.freedom ?? Number.POSITIVE_INFINITY) * log.uncertainty;
    if (share < -byChance) {
      return plain([
        undetermined(
          'claddingShare',
          'the reading rose when the cladding was stripped: the launch moved in between',
          'Fix the fibre before the coil, and read before and after several times.',
        ),
      ]);
    }
    const answer = derived({ quantity: 'claddingShare', floor: 0 }, [log], (l) => 1 - Math.exp(l!));
    return plain(
      [answer],
      [
        answer.low! > 0
          ? 'Light travels in the cladding. Strip it before judging a launch by this reading.'
          : 'No light in the cladding shows above the scatter. A coil also bends light out of modes near their cut-off.',
      ],
    );
  },
};
