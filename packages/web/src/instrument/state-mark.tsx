import type { InstrumentDescription } from '@coreward/contract';
import type { JSX } from 'react';
import { instrumentTexts } from '../texts/instrument.ts';
import { isPosted } from './kinds.ts';

/** The state of an instrument by shape and word: a full wave, a broken one, an empty ring, a fork in the way. */
export function StateMark({ instrument }: { readonly instrument: InstrumentDescription }): JSX.Element {
  const { state, kind } = instrument;
  const isWaiting = state === 'gap' && isPosted(kind);
  return (
    <span className={`state ${isWaiting ? 'waits' : state}`}>
      <svg viewBox="0 0 20 12" aria-hidden="true">
        <path d={isWaiting ? shapes.off : shapes[state]} />
      </svg>
      {isWaiting ? instrumentTexts.waits : instrumentTexts.states[state]}
    </span>
  );
}

const shapes = {
  reading: 'M1 6 Q3.5 -2 6 6 T11 6 T16 6 L19 6',
  gap: 'M1 6 Q3.5 -2 6 6 M10 6 h.5 M14 6 h.5 M18 6 h.5',
  off: 'M6 6 a4 4 0 1 0 8 0 a4 4 0 1 0 -8 0',
  trouble: 'M10 1 L18 11 H2 Z M10 5 v2.5 M10 9.2 v.3',
} as const;
