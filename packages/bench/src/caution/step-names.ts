/** In the order of work; a step's number is its place here. */
export const stepNames = [
  'before-power',
  'first-light',
  'two-mirrors',
  'lens-in',
  'end-in',
  'find-light',
  'climb',
  'full-power',
  'far-lens',
  'in-use',
  'pack-up',
] as const;
export type StepName = (typeof stepNames)[number];
