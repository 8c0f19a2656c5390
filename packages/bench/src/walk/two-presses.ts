/** When an answer that is not ready is taken: by a second press, after the first has said what it would take. */
export const twoPresses = {
  /** So long a second press is waited for, ms: afterwards the first is forgotten. */
  waits: 8_000,
  /** From the eye to the finger, ms: a press that was meant for what was ready a moment ago counts as meant. */
  reaction: 700,
} as const;
