/** Words of the fields in which quantities and words are entered. */
export const fieldTexts = {
  required: 'needed',
  origin: (key: string): string => `${key}: where it is from`,
  originNotSaid: 'origin not said',
  note: (key: string): string => `${key}: note`,
  addNote: 'note',
  at: 'for',
  atLabel: (key: string, about: string): string => `${key}: ${about}`,
  /** What stands for a field that is left empty. */
  leftOut: {
    required: 'needed',
    default: (value: string, why: string): string =>
      value === '{}' || value === '[]' ? why : `left empty: ${value} (${why})`,
    optional: (meaning: string): string => `left empty: ${meaning}`,
  },
  bare: (bare: string): string => `without ± or “within” it gets ${bare}`,
  step: 'Arrow keys move the last digit.',
  asDefault: (value: string): string => `${value}, as nothing else is said`,
  nothingSaid: 'not said',
  choose: 'choose …',
  variant: (key: string): string => `${key}: told by`,
  toldBy: 'told by',
  group: 'value by value',
  more: (keys: readonly string[]): string => `more: ${keys.join(', ')}`,
  add: (key: string): string => `add ${key}`,
  addOne: (key: string): string => `one more in ${key}`,
  takeOut: (key: string): string => `take out ${key}`,
  takeOutThis: 'take out',
  item: (key: string, rank: string): string => `${key} ${rank}`,
  orWord: (word: string): string => `or ${word}`,
  notKept: 'Not kept yet: what is marked must be mended first.',
  takeBack: 'Take back what is not kept',
  what: (key: string, before: string | null, after: string | null): string =>
    after === null
      ? `${key} left out`
      : before === null || before === ''
        ? `${key} ${after}`
        : `${key} ${before} to ${after}`,
  whatOrigin: (key: string, origin: string): string => `${key}: ${origin}`,
  whatNote: (key: string): string => `${key}: note`,
  whatVariant: (key: string, keys: string): string => `${key} told by ${keys}`,
  whatAdded: (key: string): string => `one more in ${key}`,
  whatTakenOut: (key: string): string => `${key} taken out`,
} as const;
