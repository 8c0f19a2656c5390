import { OutOfRange } from '../out-of-range.ts';

/** Throws unless `order` is 0, 1, 2, … */
export function mustBeOrder(order: number, where: string): void {
  if (!Number.isInteger(order) || order < 0) {
    throw new OutOfRange({
      where,
      what: `${order} is not an order 0, 1, 2, …`,
      mend: 'Give a whole number from 0 on.',
    });
  }
}
