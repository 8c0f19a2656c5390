import { type CardOffset, cardDrawing, fieldText, type Offsets, type SteerNow } from '@coreward/bench';
import type { JSX } from 'react';
import { steerTexts } from '../texts/steer.ts';

/** Both cards as they were last read; null before that. */
export function lastSeen({ moves }: SteerNow): Offsets | null {
  const read = moves.findLast(({ answer }) => answer.outcome === 'read')?.answer;
  return read?.outcome === 'read' ? read.offsets : null;
}

/** Both cards side by side, each with both spots, and where the laser's lay before it was moved. */
export function CardsView({
  seen,
  before,
}: {
  readonly seen: Offsets | null;
  readonly before: Offsets | null;
}): JSX.Element | null {
  if (seen === null) return null;
  return (
    <figure className="steer-cards">
      <div>
        <CardView name={steerTexts.nearCard} offset={seen.near} before={before?.near ?? null} />
        <CardView name={steerTexts.farCard} offset={seen.far} before={before?.far ?? null} />
      </div>
      <figcaption className="quiet">
        {steerTexts.legend}
        {before !== null && ` ${steerTexts.legendBefore}`}
      </figcaption>
    </figure>
  );
}

/** Places of grid lines in a square of 100; the middle one goes through the reverse spot. */
const gridLines = [12.5, 25, 37.5, 50, 62.5, 75, 87.5];

function CardView({
  name,
  offset,
  before,
}: {
  readonly name: string;
  readonly offset: CardOffset;
  readonly before: CardOffset | null;
}): JSX.Element {
  const { forward, before: from, gridText } = cardDrawing(offset, before);
  return (
    <div className="steer-card">
      <h3>{name}</h3>
      <svg
        viewBox="0 0 100 100"
        role="img"
        aria-label={steerTexts.spotsOf(name, fieldText(offset.x), fieldText(offset.y))}
      >
        <rect x="0.5" y="0.5" width="99" height="99" className="card-edge" />
        {gridLines.map((at) => (
          <g key={at} className={at === 50 ? 'card-axis' : 'card-grid'}>
            <line x1={at} x2={at} y1="0.5" y2="99.5" />
            <line x1="0.5" x2="99.5" y1={at} y2={at} />
          </g>
        ))}
        {from !== null && (
          <>
            <line x1={from.x} y1={from.y} x2={forward.x} y2={forward.y} className="card-way" />
            <circle cx={from.x} cy={from.y} r="4" className="card-before" />
          </>
        )}
        <circle cx={forward.x} cy={forward.y} r="4" className="card-forward" />
        <circle cx="50" cy="50" r="5.5" className="card-reverse" />
      </svg>
      <p className="quiet">{steerTexts.gridIs(gridText)}</p>
    </div>
  );
}
