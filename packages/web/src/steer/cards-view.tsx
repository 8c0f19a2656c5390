import { type CardOffset, cardDrawing, fieldText, type Offsets, type SteerNow } from '@coreward/bench';
import type { JSX } from 'react';
import { steerTexts } from '../texts/steer.ts';

/** Both cards as they were last read; null before that. */
export function lastSeen({ moves }: SteerNow): Offsets | null {
  const read = moves.findLast(({ answer }) => answer.outcome === 'read')?.answer;
  return read?.outcome === 'read' ? read.offsets : null;
}

/** Both cards side by side, each with both spots. */
export function CardsView({ seen }: { readonly seen: Offsets | null }): JSX.Element | null {
  if (seen === null) return null;
  return (
    <figure className="steer-cards">
      <div>
        <CardView name={steerTexts.nearCard} offset={seen.near} />
        <CardView name={steerTexts.farCard} offset={seen.far} />
      </div>
      <figcaption className="quiet">{steerTexts.legend}</figcaption>
    </figure>
  );
}

/** Places of grid lines in a square of 100; the middle one goes through the reverse spot. */
const gridLines = [12.5, 25, 37.5, 50, 62.5, 75, 87.5];

function CardView({ name, offset }: { readonly name: string; readonly offset: CardOffset }): JSX.Element {
  const { forward, gridText } = cardDrawing(offset);
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
        <circle cx={forward.x} cy={forward.y} r="4" className="card-forward" />
        <circle cx="50" cy="50" r="5.5" className="card-reverse" />
      </svg>
      <p className="quiet">{steerTexts.gridIs(gridText)}</p>
    </div>
  );
}
