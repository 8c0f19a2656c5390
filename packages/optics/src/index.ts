export { OutOfRange } from './out-of-range.ts';
