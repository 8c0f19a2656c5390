import type { Gauge, GaugeResult, Readings } from './gauge.ts';
import { column, derived, meanOf, settingAs } from './known.ts';

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
    // readings that all agree are no better than the ruler
    const seen = { ...mean, uncertainty: Math.max(mean.uncertainty, lengths.length < 4 ? 0 : grain / 3) };
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
