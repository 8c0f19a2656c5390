import { type Hazard, unbroken } from '@coreward/bench';
import type { JSX } from 'react';
import { cautionTexts } from '../texts/cautions.ts';
import { LevelMark } from './level-mark.tsx';
import './hazard-lines.css';

/** Hazards in a line or two each: what, and what to do. */
export function HazardLines({ hazards }: { readonly hazards: readonly Hazard[] }): JSX.Element {
  return (
    <ol className="hazard-lines">
      {hazards.map((hazard) => (
        <li key={hazard.id}>
          <Level hazard={hazard} /> {unbroken(hazard.what)} <strong>{unbroken(hazard.doNow)}</strong>
        </li>
      ))}
    </ol>
  );
}

/** How grave it is, in shape and word. */
export function Level({ hazard: { level, invisible } }: { readonly hazard: Hazard }): JSX.Element {
  return (
    <span className="level">
      <LevelMark level={level} /> {level}
      {invisible && `, ${cautionTexts.invisible}`}
      {':'}
    </span>
  );
}
