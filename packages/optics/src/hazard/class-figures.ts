/** The powers at which the classes of continuous light part. */
import { OutOfRange } from '../out-of-range.ts';
import { type ClosedRange, holds, nanometres } from './closed-range.ts';
import { correctionA, correctionB, correctionC, type Factor } from './correction-factors.ts';
import { type Basis, joinBases } from './evidence.ts';
import type { LimitSet } from './limit-set.ts';

/** The upper figure of a class, W; for class 1 light that lasts 100 s or longer, for class 2 a glance of 0.25 s. */
export interface ClassFigure {
  readonly set: LimitSet;
  /** m. */
  readonly wavelength: number;
  /** W, all of it through the stop. */
  readonly power: number;
  /** The exposure time the figure stands for, s. */
  readonly timeBase: number;
  readonly basis: readonly Basis[];
}

/** The figures of one row of the table. A class that does not exist there is `null`. */
export interface ClassFigures {
  readonly class1: ClassFigure;
  readonly class2: ClassFigure | null;
  readonly class3R: ClassFigure;
  readonly class3B: ClassFigure;
}

const guide: Basis = {
  evidence: 'read',
  source: 'a maker’s guide to powers by class, JIS C6802 / IEC 60825-1; training text quoting EN 60825-1',
};
const standard: Basis = { evidence: 'from memory', source: 'IEC 60825-1:2014, tables 3 to 8' };
const fiveTimes: Basis = {
  evidence: 'read',
  source: 'summary of classes: 3R is five times class 2 (400 to 700 nm) or class 1 (elsewhere)',
};

const class3BPower = 0.5;

interface ClassRow {
  /** nm. */
  readonly band: ClosedRange;
  readonly isVisible: boolean;
  readonly timeBase: number;
  readonly class1: (set: LimitSet, wavelength: number) => Class1Power;
}
interface Class1Power {
  readonly power: number;
  readonly basis: readonly Basis[];
}

const scaled = (power: number, ...factors: readonly Factor[]): Class1Power => ({
  power: factors.reduce((all, { value }) => all * value, power),
  basis: joinBases(
    [standard],
    factors.filter(({ value }) => value !== 1).map(({ basis }) => basis),
  ),
});

const rows: readonly ClassRow[] = [
  { band: { from: 315, to: 400 }, isVisible: false, timeBase: 1000, class1: () => scaled(7.9e-6) },
  { band: { from: 400, to: 700 }, isVisible: true, timeBase: 100, class1: (_, nm) => visibleClass1(nm) },
  {
    band: { from: 700, to: 1050 },
    isVisible: false,
    timeBase: 100,
    class1: (set, wavelength) => scaled(3.9e-4, correctionA(wavelength), correctionC(set, wavelength)),
  },
  {
    band: { from: 1050, to: 1400 },
    isVisible: false,
    timeBase: 100,
    class1: (set, wavelength) => scaled(1.95e-3, correctionC(set, wavelength)),
  },
  { band: { from: 1400, to: 4000 }, isVisible: false, timeBase: 100, class1: () => scaled(1e-2) },
];

/** 0.39 mW in the red, 0.039 mW in the violet, both read; in between C_B carries the one to the other. */
function visibleClass1(wavelength: number): Class1Power {
  const factor = correctionB(wavelength);
  if (factor.value === 1) return { power: 3.9e-5, basis: [guide] };
  const photochemical = scaled(3.9e-5, factor);
  return photochemical.power < 3.9e-4 ? photochemical : { power: 3.9e-4, basis: [guide] };
}

/**
 * The figures of every row of the table that holds the wavelength: one, or two on a shared boundary.
 *
 * 3R is five times class 1, or five times class 2 where there is one; the table's own rounded figures are up to 3 % higher.
 *
 * @param wavelength m, 315 to 4000 nm
 * @throws {OutOfRange} outside that band
 * @source IEC 60825-1: 0.39 mW (red), 0.039 mW (violet), 1 mW, 5 mW, 0.5 W and the rule of five read elsewhere; the rest of
 *   IEC 60825-1:2014, tables 3 to 8, from memory
 */
export function classFigures(set: LimitSet, wavelength: number): readonly ClassFigures[] {
  const nm = nanometres(wavelength);
  const matches = rows.filter(({ band }) => holds(band, nm));
  if (matches.length === 0) {
    throw new OutOfRange({
      where: 'wavelength',
      what: `the class of light of ${nm} nm is outside what this tool covers, 315 to 4000 nm`,
      mend: 'Treat it like class 4, and ask your laser safety officer.',
    });
  }
  return matches.map((row) => figuresOf(row, set, wavelength));
}

function figuresOf(row: ClassRow, set: LimitSet, wavelength: number): ClassFigures {
  const figure = (power: number, basis: readonly Basis[], timeBase = row.timeBase): ClassFigure => ({
    set,
    wavelength,
    power: Math.min(power, class3BPower),
    timeBase,
    basis,
  });
  const first = row.class1(set, wavelength);
  const class2 = row.isVisible ? figure(1e-3, [guide], 0.25) : null;
  return {
    class1: figure(first.power, first.basis),
    class2,
    class3R:
      class2 === null
        ? figure(5 * first.power, joinBases([fiveTimes], first.basis))
        : figure(5 * class2.power, joinBases([fiveTimes], class2.basis), 0.25),
    class3B: figure(class3BPower, [row.band.from === 315 ? standard : guide]),
  };
}

/** The lowest class 1 figure at a wavelength, of all rows that hold it. @source as `classFigures` */
export function class1Figure(set: LimitSet, wavelength: number): ClassFigure {
  const [first, ...others] = classFigures(set, wavelength).map(({ class1 }) => class1);
  return others.reduce((least, one) => (one.power < least.power ? one : least), first!);
}
