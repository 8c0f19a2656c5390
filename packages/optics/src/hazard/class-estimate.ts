/** As what a laser would be treated. An estimate for cautions: to classify is its maker's task. */
import { OutOfRange } from '../out-of-range.ts';
import { mustBePower } from './beam-definition.ts';
import { type ClassFigures, classFigures } from './class-figures.ts';
import { nanometres } from './closed-range.ts';
import { type Basis, joinBases } from './evidence.ts';
import { classWording, type LaserClass, worstClass } from './laser-class.ts';
import type { LimitSet } from './limit-set.ts';

/** What class a laser would be treated like here: an estimate from its stated power, no classification. */
export interface ClassEstimate {
  readonly treatedLike: LaserClass;
  /** "would be treated like class 3B here": never more than that. */
  readonly wording: string;
  readonly set: LimitSet;
  /** m. */
  readonly wavelength: number;
  /** W, or `null` if nobody knows it. */
  readonly power: number | null;
  /** The exposure time of the figures, s; the longest of them. */
  readonly timeBase: number;
  /** What was assumed of the beam. */
  readonly assumed: string;
  /** What else must be said. */
  readonly remarks: readonly string[];
  readonly basis: readonly Basis[];
}

/** C_C is 8 there in the older set and up to 10⁶ in the newer: the older one is the stricter. */
const set: LimitSet = 'eu2006';

/**
 * The class of continuous light, all of whose power is taken to enter the stop: no beam is too wide to count.
 *
 * @param power the highest the driver can give, W; `null`: not known, which counts as the worst
 * @throws {OutOfRange} outside 315 to 4000 nm, or for a negative power
 * @source as `classFigures`
 */
export function classEstimate({
  wavelength,
  power,
}: {
  /** m. */
  readonly wavelength: number;
  readonly power: number | null;
}): ClassEstimate {
  const figures = classFigures(set, wavelength);
  if (power === null) {
    return estimate('4', wavelength, power, figures, 'the power is not known: the worst is assumed');
  }
  mustBePower(power);
  const classes = figures.map((one) => classOf(power, one));
  return estimate(
    worstClass(...asNonEmpty(classes)),
    wavelength,
    power,
    figures,
    'all the power enters the stop',
  );
}

function classOf(power: number, { class1, class2, class3R, class3B }: ClassFigures): LaserClass {
  if (power <= class1.power) return '1';
  if (class2 !== null && power <= class2.power) return '2';
  if (power <= class3R.power) return '3R';
  return power <= class3B.power ? '3B' : '4';
}

/** Powers through the stops of the standard, W; they are measured or computed for the beam at hand. */
export interface StopPowers {
  /** m. */
  readonly wavelength: number;
  /** Through the stop for the naked eye: 7 mm at 100 mm, beyond 1400 nm 3.5 mm. */
  readonly nakedEyePower: number;
  /** Through the stop for a telescope, or a magnifier before a fibre end, whichever passes more; `null`: not known. */
  readonly aidedPower: number | null;
  /** W. */
  readonly totalPower: number;
}

/**
 * The same for a wide or strongly spreading beam, where the classes 1M and 2M come in: little enters the naked eye, much a
 * telescope or a magnifier.
 *
 * @throws {OutOfRange} outside 315 to 4000 nm, for a negative power, or if more goes through a stop than there is
 * @source conditions of EN 60825-1:2001 (read in a summary) and IEC 60825-1:2014 (from memory); figures as `classFigures`
 */
export function classEstimateThroughStops({
  wavelength,
  nakedEyePower,
  aidedPower,
  totalPower,
}: StopPowers): ClassEstimate {
  const figures = classFigures(set, wavelength);
  const aided = Math.max(nakedEyePower, aidedPower ?? totalPower);
  for (const power of [nakedEyePower, aided, totalPower]) mustBePower(power);
  if (aided > totalPower) {
    throw new OutOfRange({
      where: 'totalPower',
      what: `${aided} W goes through a stop, and there are ${totalPower} W in all`,
      mend: 'Give the total power of the laser, the highest its driver can reach.',
    });
  }
  const classes = figures.map((one) => classThroughStops(nakedEyePower, aided, one));
  const assumed =
    aidedPower === null
      ? 'what enters a telescope is not known: all the power is assumed to'
      : 'the powers through the stops as given';
  return estimate(worstClass(...asNonEmpty(classes)), wavelength, totalPower, figures, assumed);
}

function classThroughStops(naked: number, aided: number, figures: ClassFigures): LaserClass {
  const { class1, class2, class3B } = figures;
  if (aided > class3B.power) return '4';
  if (aided <= class1.power) return '1';
  if (naked <= class1.power) return '1M';
  if (class2 !== null && aided <= class2.power) return '2';
  if (class2 !== null && naked <= class2.power) return '2M';
  return classOf(aided, figures);
}

/**
 * A label counts only if it is higher: modules are often over their power or leak infrared.
 *
 * @param label the class on the laser; `null`: none, or not legible
 */
export function withLabel(estimated: ClassEstimate, label: LaserClass | null): ClassEstimate {
  if (label === null) return estimated;
  const treatedLike = worstClass(estimated.treatedLike, label);
  const remark =
    treatedLike !== estimated.treatedLike
      ? `the label says class ${label}, which is higher`
      : label === estimated.treatedLike
        ? null
        : `the label says class ${label}; a lower label does not lower the estimate`;
  return {
    ...estimated,
    treatedLike,
    wording: classWording(treatedLike),
    remarks: remark === null ? estimated.remarks : [...estimated.remarks, remark],
  };
}

const asNonEmpty = (classes: readonly LaserClass[]) => classes as readonly [LaserClass, ...LaserClass[]];

function estimate(
  treatedLike: LaserClass,
  wavelength: number,
  power: number | null,
  figures: readonly ClassFigures[],
  assumed: string,
): ClassEstimate {
  const nm = nanometres(wavelength);
  const used = figures.flatMap(({ class1, class2, class3R, class3B }) =>
    [class1, class2, class3R, class3B].filter((figure) => figure !== null),
  );
  return {
    treatedLike,
    wording: classWording(treatedLike),
    set,
    wavelength,
    power,
    timeBase: Math.max(...used.map(({ timeBase }) => timeBase)),
    assumed,
    remarks:
      nm >= 1200 && nm <= 1400
        ? ['the stricter factor C_C = 8 of the older set is used; the newer standard allows far more']
        : [],
    basis: joinBases(...used.map(({ basis }) => basis)),
  };
}
