import type { Gauge, GaugeResult, Readings } from './gauge.ts';
import { column, derived, type Known, meanOf, settingAs } from './known.ts';

/** The gauge that is a ruler, or a tape, laid on several times. */
export const ruler: Gauge = {
  name: 'ruler',
  otherNames: ['tape'],
  title: 'ruler',
  answers: 'a length, with what a ruler can tell',
  needs: 'a ruler or a tape, laid on anew for each reading',
  takes: 'table',
  columns: [
    {
      name: 'length',
      dimension: 'length',
      needed: true,
      otherNames: ['reading', 'distance', 'diameter', 'l'],
      what: 'the length, once or several times',
    },
  ],
  settings: [
    {
      name: 'division',
      dimension: 'length',
      example: '1 mm',
      needed: false,
      what: 'of the ruler; left out: 1 mm',
    },
  ],
  measure: (readings: Readings): GaugeResult => {
    const division = readings.settings.division?.value ?? 1e-3;
    const lengths = column(readings, 'length');
    // both ends are read to anywhere within a division: twice 1/12 of its square
    const grain = division / Math.sqrt(6);
    const mean = meanOf('readings', lengths, grain);
    const seen = lengths.length < 4 ? mean : scattered(mean, lengths, division);
    // a ruler from a drawer is off by a part in a thousand (common practice, no source)
    const scale = settingAs('scale of the ruler', { value: 1, uncertainty: null }, 1e-3);
    return {
      answers: [
        derived({ quantity: 'length_m', shape: 'positive' }, [seen, scale], (length, one) => length! * one!),
      ],
      remarks: [],
      curves: [],
    };
  },
};

/**
 * The mean of enough readings by what they scatter. Where all agree they were rounded alike, as where one end always lies at
 * nought: however many they are, their mean is as good as one.
 *
 * @source even law from −½ to ½ of a step, JCGM 100:2008, F.2.2.1 (from memory)
 */
function scattered(mean: Known, lengths: readonly number[], division: number): Known {
  if (lengths.every((length) => length === lengths[0]))
    return { from: 'division of the ruler', value: mean.value, uncertainty: division / Math.sqrt(12) };
  // readings that nearly agree are no better than the ruler
  return { ...mean, uncertainty: Math.max(mean.uncertainty, division / Math.sqrt(6) / 3) };
}
