import { glassNamed, glassNames, refractiveIndex } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { undetermined } from '../answer.ts';
import type { Gauge, GaugeResult } from '../gauge.ts';
import { column, derived, type Known, meanOf, settingAs } from '../known.ts';
import { type Line, lineThrough } from '../line.ts';
import { reverseLight } from './reverse-light.ts';

/** The gauge that images something and measures both distances. */
export const imaging: Gauge = {
  name: 'imaging',
  otherNames: [],
  title: 'imaging',
  answers: 'focal length of a lens, from object and image distance',
  needs: 'a bright object, a card on which its image is sharp, and a ruler; several distances',
  takes: 'table',
  columns: [
    {
      name: 'object distance',
      dimension: 'length',
      needed: true,
      otherNames: ['object', 'a', 'u'],
      what: 'from the object to the middle of the lens',
    },
    {
      name: 'image distance',
      dimension: 'length',
      needed: true,
      otherNames: ['image', 'b', 'v'],
      what: 'from the middle of the lens to the sharp image',
    },
  ],
  settings: [
    {
      name: 'distance uncertainty',
      dimension: 'length',
      example: '2 mm',
      needed: false,
      what: 'standard uncertainty of one distance, focusing included; left out: 2 mm',
    },
  ],
  measure: (readings) => {
    const [a, b] = [column(readings, 'object distance'), column(readings, 'image distance')];
    const stated = readings.settings['distance uncertainty']?.value ?? 2e-3;
    // 1/f = 1/a + 1/b (from memory: any text on optics); each pair gives its own f
    const focal = a.map((x, i) => (x * b[i]!) / (x + b[i]!));
    const one = a.map((x, i) => {
      const y = b[i]!;
      return (stated * Math.hypot(y * y, x * x)) / (x + y) ** 2;
    });
    const usual = Math.sqrt(one.reduce((sum, u) => sum + u * u, 0) / one.length);
    return plain(derived({ quantity: 'focalLength_m' }, [meanOf('distances', focal, usual)], (f) => f!));
  },
};

/** The gauge that measures light sent backwards where it leaves the collimator. */
export const reverseRadius: Gauge = {
  name: 'reverse-radius',
  otherNames: [],
  title: 'reverse beam at the collimator',
  answers: 'focal length of a collimator, from the width of light sent backwards where it leaves the lens',
  needs:
    'a reference source in the fibre’s far end, and a knife edge or a ruler at the lens; the fibre’s mode known',
  takes: 'table',
  columns: [
    {
      name: 'diameter',
      dimension: 'length',
      needed: true,
      otherNames: ['d', 'beam diameter', 'd4sigma'],
      what: 'of the beam at the lens, 1/e² of intensity',
    },
  ],
  settings: [
    ...reverseLight,
    {
      name: 'diameter uncertainty',
      dimension: 'length',
      example: '0.2 mm',
      needed: false,
      what: 'standard uncertainty of one diameter; left out: 0.2 mm',
    },
  ],
  measure: (readings) => {
    const { settings } = readings;
    const [wavelength, mode] = [settings.wavelength!, settings['mode field diameter']!];
    const stated = settings['diameter uncertainty']?.value ?? 0.2e-3;
    // w = λf/(πw₀) of a Gaussian from the focus (from memory: H. Kogelnik and T. Li, Appl. Opt. 5, 1550 (1966))
    return plain(
      derived(
        { quantity: 'focalLength_m', shape: 'positive' },
        [
          meanOf('diameters', column(readings, 'diameter'), stated),
          settingAs('mode field diameter', mode, 0.03 * mode.value),
          settingAs('wavelength', wavelength, 0),
        ],
        (d, of, lambda) => (Math.PI * (of! / 2) * (d! / 2)) / lambda!,
      ),
    );
  },
};

/** The gauge that sets a collimator for two colours and reads how far its tip moved. */
export const twoColourFocus: Gauge = {
  name: 'two-colour-focus',
  otherNames: ['two-color-focus'],
  title: 'focus for two colours',
  answers:
    'focal length of a singlet collimator at the first wavelength, from how far its tip moves between two colours',
  needs: 'two sources of known wavelength, a far wall, and the scale of the focus thread',
  takes: 'table',
  columns: [
    {
      name: 'first',
      dimension: 'length',
      needed: true,
      otherNames: ['tip at first', 'reading 1', 'first reading'],
      what: 'from the lens to the tip, on any scale, where the first colour leaves collimated',
    },
    {
      name: 'second',
      dimension: 'length',
      needed: true,
      otherNames: ['tip at second', 'reading 2', 'second reading'],
      what: 'the same for the second colour',
    },
  ],
  settings: [
    {
      name: 'wavelength 1',
      dimension: 'length',
      needed: true,
      otherNames: ['first wavelength', 'wavelength1'],
      what: 'of the first colour',
    },
    {
      name: 'wavelength 2',
      dimension: 'length',
      needed: true,
      otherNames: ['second wavelength', 'wavelength2'],
      what: 'of the second colour',
    },
    {
      name: 'glass',
      dimension: 'word',
      words: Object.fromEntries(glassNames.map((name) => [name.toLowerCase(), name])),
      needed: true,
      what: 'of the lens',
    },
    {
      name: 'tip uncertainty',
      dimension: 'length',
      example: '10 µm',
      needed: false,
      what: 'standard uncertainty of one setting; left out: 10 µm',
    },
  ],
  measure: (readings) => {
    const { settings, words } = readings;
    const glass = glassNamed(words.glass!);
    const [first, second] = [settings['wavelength 1']!, settings['wavelength 2']!];
    const ratio = (a: number, b: number): number =>
      (refractiveIndex(glass, a) - 1) / (refractiveIndex(glass, b) - 1) - 1;
    const moved = column(readings, 'first').map((x, i) => column(readings, 'second')[i]! - x);
    const stated = (settings['tip uncertainty']?.value ?? 10e-6) * Math.SQRT2;
    const shift = meanOf('settings of the tip', moved, stated);
    if (!(shift.uncertainty < 0.3 * Math.abs(shift.value))) {
      return plain(
        undetermined(
          'focalLength_m',
          'the tip moves by no more than it can be set',
          'Take colours farther apart, or repeat each setting five times.',
        ),
      );
    }
    return plain(
      derived(
        { quantity: 'focalLength_m', shape: 'positive' },
        [shift, settingAs('first wavelength', first, 1e-9), settingAs('second wavelength', second, 1e-9)],
        // f ∝ 1/(n − 1) of a thin lens, so f₂ − f₁ = f₁[(n₁ − 1)/(n₂ − 1) − 1]
        (d, a, b) => d! / ratio(a!, b!),
      ),
    );
  },
};

/** The gauge that counts turns of a thread and measures how far it went. */
export const threadPitch: Gauge = {
  name: 'thread-pitch',
  otherNames: [],
  title: 'thread pitch',
  answers: 'advance of a focus thread or a screw for one turn',
  needs: 'a ruler or a calliper, and turns counted',
  takes: 'table',
  columns: [
    {
      name: 'turns',
      dimension: 'turns',
      needed: true,
      otherNames: ['turn', 'n'],
      what: 'counted from any mark',
    },
    {
      name: 'advance',
      dimension: 'length',
      needed: true,
      otherNames: ['position', 'reading', 'length', 'x'],
      what: 'how far it stands out',
    },
  ],
  settings: [
    {
      name: 'advance uncertainty',
      dimension: 'length',
      example: '0.1 mm',
      needed: false,
      what: 'standard uncertainty of one reading; left out: 0.1 mm',
    },
  ],
  measure: (readings) => {
    const [turns, advance] = [column(readings, 'turns'), column(readings, 'advance')];
    if (turns.length < 2) {
      throw new Refusal({
        where: 'thread-pitch readings',
        what: 'there is only one reading',
        mend: 'Read before and after ten turns.',
      });
    }
    const stated = readings.settings['advance uncertainty']?.value ?? 0.1e-3;
    const line = lineThrough(turns, advance, stated);
    const slope = line === null ? null : slopeOf(line);
    if (line === null || slope === null || !(slope.uncertainty < 0.3 * slope.value)) {
      return plain(
        undetermined(
          'pitch_m_per_turn',
          'it moves by no more than the reading can tell',
          'Count more turns.',
        ),
      );
    }
    return {
      ...plain(derived({ quantity: 'pitch_m_per_turn', shape: 'positive' }, [slope], (p) => p!)),
      curves: [
        {
          title: 'advance of the thread',
          across: 'turns',
          up: 'advance (m)',
          x: turns,
          readings: advance,
          fit: line.curve,
        },
      ],
    };
  },
};

/** The slope of a line without its sign, as an input. */
function slopeOf({ slope, covariance, freedom, doubtFreedom }: Line): Known {
  return {
    from: freedom > 0 ? 'scatter of the readings' : 'one reading, as stated or assumed',
    value: Math.abs(slope),
    uncertainty: Math.sqrt(covariance[1]![1]!),
    freedom: doubtFreedom,
  };
}

const plain = (...answers: GaugeResult['answers']): GaugeResult => ({ answers, remarks: [], curves: [] });
