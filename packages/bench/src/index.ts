export type { Drawer } from './drawer/drawer.ts';
export type * from './launch/launch.ts';
export { readLaunch } from './launch/read-launch.ts';
export { combine, exact } from './quantity/combine.ts';
export { cumulativeOf, type Interval, intervalOf, quantileOf } from './quantity/distribution.ts';
export { compareOrigins, weakestOrigin } from './quantity/origin.ts';
export { type Entry, type Origin, origins, type Quantity, type Shape } from './quantity/quantity.ts';
export { Refusal, type RefusalParts } from './refusal.ts';
export { type Dimension, dimensions } from './units/dimension.ts';
export { exactText } from './units/exact-text.ts';
export type { QuantityOptions } from './units/mend.ts';
export type { QuantityLimits, QuantityRead } from './units/quantity-read.ts';
export { type QuantityRefused, readQuantity } from './units/read-quantity.ts';
export {
  writeDecibel,
  writeDecibelMilliwatt,
  writeInterval,
  writeQuantity,
  writeValue,
} from './units/write.ts';
