/** What a line typed at a step means. */
export type TypedLine<Answer> =
  | { readonly do: 'answer'; readonly answer: Answer }
  /** The simulated hand does the step. */
  | { readonly do: 'hand' }
  | { readonly do: 'undo' }
  | { readonly do: 'quit' }
  /** Nothing that can be taken; why, and what to type instead. */
  | { readonly do: 'say'; readonly text: string };
