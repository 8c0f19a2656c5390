import { stepModes } from '@coreward/optics';
import { Refusal } from '../../refusal.ts';
import { type GaugeAnswer, undetermined } from '../answer.ts';
import type { Gauge, GaugeResult, Readings } from '../gauge.ts';
import { column, derived, type Known, meanOf, settingAs } from '../known.ts';
import { lineThrough } from '../line.ts';
import { setTo, setToWithin } from '../setting-words.ts';

const plain = (...answers: readonly GaugeAnswer[]): GaugeResult => ({ answers, remarks: [], curves: [] });

/** The gauge that compares core and cladding in a magnified picture of the lit end. */
export const corePicture: Gauge = {
  name: 'core-picture',
  otherNames: [],
  title: 'picture of the core',
  answers: 'core diameter, from a magnified picture of the lit end',
  needs: 'a magnifier and a phone; the cladding’s diameter as the scale',
  takes: 'table',
  columns: [
    {
      name: 'core',
      dimension: 'number',
      needed: true,
      otherNames: ['core px', 'core pixels'],
      what: 'width of the lit core at half of its brightness, pixels',
    },
    {
      name: 'cladding',
      dimension: 'number',
      needed: true,
      otherNames: ['cladding px', 'cladding pixels'],
      what: 'width of the cladding in the same picture, pixels',
    },
  ],
  settings: [
    {
      name: 'cladding diameter',
      dimension: 'length',
      example: '125 µm ± 0.7 µm',
      needed: true,
      what: 'such as 125 µm ± 0.7 µm for standard fibre',
    },
    {
      name: 'pixel uncertainty',
      dimension: 'number',
      example: '1.5',
      needed: false,
      what: 'standard uncertainty of one width, pixels; left out: 1.5',
    },
  ],
  measure: (readings) => {
    const [core, cladding] = [column(readings, 'core'), column(readings, 'cladding')];
    const width = readings.settings['cladding diameter']!;
    const stated = readings.settings['pixel uncertainty']?.value ?? 1.5;
    const ratios = core.map((c, i) => c / cladding[i]!);
    const one = Math.max(
      ...core.map((c, i) => (c / cladding[i]!) * Math.hypot(stated / c, stated / cladding[i]!)),
    );
    return plain(
      derived(
        { quantity: 'coreDiameter_m', shape: 'positive' },
        [meanOf('widths', ratios, one), settingAs('cladding diameter', width, 0.01 * width.value)],
        (ratio, cladding) => ratio! * cladding!,
      ),
    );
  },
};

/** The gauge that counts modes, or uses the wavelength where the second one goes. */
export const modeCount: Gauge = {
  name: 'mode-count',
  otherNames: ['cut-off'],
  title: 'modes counted',
  answers: 'core diameter of a step-index fibre, from the LP modes seen or from the cut-off wavelength',
  needs:
    'pictures of the far end while the launch is moved, or a tunable source; the numerical aperture known',
  takes: 'table',
  columns: [],
  settings: [
    {
      name: 'numerical aperture',
      dimension: 'number',
      example: '0.12',
      needed: true,
      otherNames: ['na'],
      what: 'of the fibre, √(n₁² − n₂²)',
    },
    {
      name: 'wavelength',
      dimension: 'length',
      needed: false,
      otherNames: ['lambda', 'λ'],
      what: 'with which the modes were counted',
    },
    {
      name: 'modes',
      dimension: 'number',
      example: '6',
      needed: false,
      otherNames: ['lp modes'],
      what: 'LP modes seen, orientations counted once',
    },
    {
      name: 'cut-off',
      dimension: 'length',
      example: '610 nm',
      needed: false,
      otherNames: ['cutoff', 'cut-off wavelength', 'cutoff wavelength'],
      what: 'wavelength above which only the fundamental mode is left',
    },
  ],
  measure: measureModes,
};

function measureModes({ settings }: Readings): GaugeResult {
  const aperture = settingAs(
    'numerical aperture',
    settings['numerical aperture']!,
    0.04 * settings['numerical aperture']!.value,
  );
  const cutOff = settings['cut-off'];
  const diameter = (v: number, wavelength: number, na: number): number => (v * wavelength) / (Math.PI * na);
  if (cutOff !== undefined) {
    // a cut-off seen is some per cent below the theoretical one, for the mode is lost at the first bend (common practice, no source)
    const wavelength = settingAs('cut-off wavelength', cutOff, 0.03 * cutOff.value);
    return plain(
      derived({ quantity: 'coreDiameter_m', shape: 'positive' }, [wavelength, aperture], (at, na) =>
        diameter(2.4048, at!, na!),
      ),
    );
  }
  const [wavelength, modes] = [settings.wavelength, settings.modes];
  if (wavelength === undefined || modes === undefined) {
    throw new Refusal({
      where: 'mode-count',
      what: 'there is neither a cut-off nor a count of modes with its wavelength',
      mend: `${setTo('cut-off', '620 nm')}; or ${setToWithin('modes', '4')} and ${setToWithin('wavelength', '633 nm')}.`,
    });
  }
  const count = Math.round(modes.value);
  if (!(count >= 1 && count <= 60)) {
    throw new Refusal({
      where: 'mode-count modes',
      what: `${modes.value} modes cannot be counted`,
      mend: 'Count from 1 to 60 LP modes.',
    });
  }
  const [from, to] = [count === 1 ? 1.2 : firstV(count), firstV(count + 1)];
  const v: Known = {
    from: 'V anywhere between two cut-offs',
    value: (from + to) / 2,
    uncertainty: (to - from) / Math.sqrt(12),
  };
  return plain(
    derived(
      {
        quantity: 'coreDiameter_m',
        shape: 'positive',
        weak: {
          because: 'a count of modes only brackets V',
          add: 'Count at a second wavelength, or find the cut-off.',
        },
      },
      [v, settingAs('wavelength', wavelength, 0), aperture],
      (of, lambda, na) => diameter(of!, lambda!, na!),
    ),
  );
}

/** Smallest V with so many LP modes in a step-index core. */
function firstV(count: number): number {
  let [below, above] = [0.5, 2];
  while (lpModes(above) < count) [below, above] = [above, above * 1.5];
  while (above - below > 1e-6) {
    const middle = (below + above) / 2;
    if (lpModes(middle) < count) below = middle;
    else above = middle;
  }
  return above;
}

const lpModes = (v: number): number => stepModes(v).length;

/** The gauge that compares lengths of one fibre. */
export const cutBack: Gauge = {
  name: 'cut-back',
  otherNames: ['two-lengths', 'cutback'],
  title: 'cut-back',
  answers: 'attenuation of a fibre, from its output at several lengths',
  needs:
    'the launch left untouched while the fibre is cut shorter; cladding light stripped; the same detector',
  takes: 'table',
  columns: [
    {
      name: 'length',
      dimension: 'length',
      needed: true,
      otherNames: ['l', 'z', 'fibre length', 'fiber length'],
      what: 'of the fibre',
    },
    {
      name: 'power',
      dimension: 'reading',
      needed: true,
      otherNames: ['reading', 'p', 'signal', 'output', 'voltage'],
      what: 'at its end; only ratios count',
    },
  ],
  settings: [
    {
      name: 'power repeats to',
      dimension: 'fraction',
      needed: false,
      what: 'standard uncertainty of one power with its new end, as a share; left out: 3 %',
    },
  ],
  measure: (readings) => {
    const [lengths, powers] = [column(readings, 'length'), column(readings, 'power')];
    if (lengths.length < 2 || powers.some((p) => !(p > 0))) {
      throw new Refusal({
        where: 'cut-back readings',
        what: 'there are no two lengths with light at their end',
        mend: 'Give the power, less the dark reading, at two lengths or more.',
      });
    }
    const stated = readings.settings['power repeats to']?.value ?? 0.03;
    const logs = powers.map(Math.log);
    const line = lineThrough(lengths, logs, stated);
    if (line === null)
      return plain(
        undetermined('attenuation_per_m', 'there is only one length', 'Cut a good part off, and read again.'),
      );
    // of few readings the scatter says too little: what a new end repeats to counts
    const bySpread = line.freedom >= 3;
    const u = bySpread ? Math.sqrt(line.covariance[1]![1]!) : stated / Math.sqrt(spreadOf(lengths));
    const attenuation = -line.slope;
    if (!(u < 0.4 * attenuation)) {
      return plain(
        undetermined(
          'attenuation_per_m',
          `the loss over these lengths is no more than ${bySpread ? 'the readings scatter' : 'a new end repeats to'}`,
          `Compare lengths that differ by ${Math.ceil((4 * stated) / Math.max(Math.abs(attenuation), 1e-6))} m or more, or average several ends.`,
        ),
      );
    }
    const known: Known = bySpread
      ? { from: 'scatter of the powers', value: attenuation, uncertainty: u, freedom: line.doubtFreedom }
      : { from: 'how well a new end repeats, as stated or assumed', value: attenuation, uncertainty: u };
    return {
      answers: [derived({ quantity: 'attenuation_per_m' }, [known], (a) => a!)],
      remarks: [],
      curves: [
        {
          title: 'logarithm of the power',
          across: 'length (m)',
          up: 'ln of the reading',
          x: lengths,
          readings: logs,
          fit: line.curve,
        },
      ],
    };
  },
};

/** Σ(x − mean)². */
function spreadOf(values: readonly number[]): number {
  const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
  return values.reduce((sum, x) => sum + (x - mean) ** 2, 0);
}
