/** What was asked of light lies outside what the formula knows. */
export interface OutOfRangeParts {
  /** The function or the argument, by its name. */
  readonly where: string;
  /** The offending value and the range it left. */
  readonly what: string;
  /** The one change that works if followed to the letter. */
  readonly mend: string;
}

/** Thrown by every function of this room that is asked outside its validity range. */
export class OutOfRange extends Error {
  readonly where: string;
  readonly what: string;
  readonly mend: string;

  constructor({ where, what, mend }: OutOfRangeParts) {
    super(`${where}: ${what}. ${mend}`);
    this.name = 'OutOfRange';
    this.where = where;
    this.what = what;
    this.mend = mend;
  }
}

/** Throws unless `value` is finite and above zero. `where` names the argument, `what` the thing, as in "a wavelength". */
export function mustBePositive(value: number, where: string, what: string): void {
  if (!(value > 0 && Number.isFinite(value))) {
    throw new OutOfRange({
      where,
      what: `${value} is not ${what}`,
      mend: 'Give a finite value above zero, in SI units.',
    });
  }
}
