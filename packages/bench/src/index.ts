export type { Drawer } from './drawer/drawer.ts';
export type * from './launch/launch.ts';
export type { Entry, Origin, Quantity, Shape } from './quantity/quantity.ts';
export { Refusal, type RefusalParts } from './refusal.ts';
