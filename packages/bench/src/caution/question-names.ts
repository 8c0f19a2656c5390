/**
 * What is asked about the hidden hazards of a bench, in the order in which it is asked. The names are stable: answers are
 * kept under them, laser by laser.
 */
export const questionNames = [
  'highest-power',
  'emission',
  'infrared',
  'other-light',
  'profile',
  'label',
  'viewer',
  'reference-power',
  'reference-infrared',
  'beam-height',
  'both-ends',
  'fibre-whole',
  'reference-isolated',
  'laser-isolated',
  'marked',
  'glass-pieces',
  'interlock',
  'non-beam',
  'officer',
  'room-length',
] as const;
export type QuestionName = (typeof questionNames)[number];
