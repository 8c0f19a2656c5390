import { isSameScrew, type Screw, screwWords } from '@coreward/bench';
import type { JSX } from 'react';
import { walkTexts } from '../texts/walk.ts';
import { Knob } from './knob.tsx';

const screws: readonly Screw[] = [
  { mirror: 'M1', axis: 'horizontal' },
  { mirror: 'M1', axis: 'vertical' },
  { mirror: 'M2', axis: 'horizontal' },
  { mirror: 'M2', axis: 'vertical' },
];

/** The screws of a practice bench, and a hand before its beam. Where they stand is hidden, as on a real one. */
export function PracticePanel({
  asked,
  turned,
  isBlocked,
  onTurn,
  onBlock,
}: {
  /** Null: the step asks for none. */
  readonly asked: Screw | null;
  /** The one that was last turned in this step; null: none was. */
  readonly turned: Screw | null;
  readonly isBlocked: boolean;
  readonly onTurn: (screw: Screw, turns: number) => void;
  readonly onBlock: (blocked: boolean) => void;
}): JSX.Element {
  const others = screws.filter((screw) => !isSameScrew(screw, asked));
  const knob = (screw: Screw): JSX.Element => (
    <Knob
      key={screwWords(screw)}
      screw={screw}
      isAsked={isSameScrew(screw, asked)}
      isWrong={isSameScrew(screw, turned) && !isSameScrew(screw, asked)}
      onTurn={(turns) => onTurn(screw, turns)}
    />
  );
  return (
    <section className="screws no-print" aria-label={walkTexts.screws}>
      {asked !== null && knob(asked)}
      <details className="more">
        <summary>{asked === null ? walkTexts.allScrews : walkTexts.otherScrews}</summary>
        {others.map(knob)}
      </details>
      <div className="pad">
        <button type="button" className="big" aria-pressed={isBlocked} onClick={() => onBlock(!isBlocked)}>
          {walkTexts.block}
          <span className="switch-state" aria-hidden="true">
            {isBlocked ? walkTexts.isBlocked : walkTexts.isThrough}
          </span>
        </button>
      </div>
      <p className="quiet small">{walkTexts.screwText}</p>
    </section>
  );
}
