import { useEffect, useState } from 'react';

/** Of what is asked for one after the other only the newest is answered. */
export interface Newest {
  /** The answer, or never: one that was overtaken on its way is not heard. */
  readonly of: <Answer>(asking: Promise<Answer>) => Promise<Answer>;
  /** Whatever is on its way is not heard any more. */
  readonly forget: () => void;
}

export function newestAnswer(): Newest {
  let turn = 0;
  return {
    of: (asking) => {
      turn += 1;
      const own = turn;
      return new Promise((resolve, reject) => {
        asking.then(
          (answer) => own === turn && resolve(answer),
          (error: unknown) => own === turn && reject(error),
        );
      });
    },
    forget: () => {
      turn += 1;
    },
  };
}

/** Nothing is heard when the page was left. */
export function useNewest(): Newest {
  const [newest] = useState(newestAnswer);
  useEffect(() => newest.forget, [newest]);
  return newest;
}
