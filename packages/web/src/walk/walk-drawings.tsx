import { ridgePicture, traceOf, type WalkEstimate, type WalkMove } from '@coreward/bench';
import type { JSX } from 'react';
import { walkTexts } from '../texts/walk.ts';

/** The readings in their order, the best at the top. */
export function Trace({ moves }: { readonly moves: readonly WalkMove[] }): JSX.Element {
  const points = traceOf(moves);
  return (
    <figure className="walk-figure">
      <figcaption>{walkTexts.trace}</figcaption>
      <svg viewBox="-2 -2 104 54" role="img" aria-label={walkTexts.trace}>
        <path className="thin" d="M0 0H100M0 16.67H100M0 33.33H100M0 50H100" />
        <polyline
          className="drawn"
          points={points.map(({ x, y }) => `${100 * x},${50 - 50 * y}`).join(' ')}
        />
        {points.map(({ x, y }) => (
          <circle key={x} className="dot" cx={100 * x} cy={50 - 50 * y} r="1" />
        ))}
      </svg>
    </figure>
  );
}

/** The ridge as it is fitted: a point with its doubt between two axes. */
export function Ridge({ estimate }: { readonly estimate: WalkEstimate }): JSX.Element | null {
  const picture = ridgePicture(estimate);
  if (picture === null) return null;
  const { x, y, halfX, halfY } = picture;
  return (
    <figure className="walk-figure ridge">
      <figcaption>{walkTexts.ridge}</figcaption>
      <svg viewBox="-2 -2 104 104" role="img" aria-label={walkTexts.ridge}>
        <path className="thin" d="M0 50H100M50 0V100" />
        <ellipse className="doubt" cx={100 * x} cy={100 - 100 * y} rx={100 * halfX} ry={100 * halfY} />
        <circle className="dot" cx={100 * x} cy={100 - 100 * y} r="1.4" />
        <text x="100" y="47" textAnchor="end">
          {walkTexts.horizontal}
        </text>
        <text x="53" y="5">
          {walkTexts.vertical}
        </text>
      </svg>
      <p className="quiet">{walkTexts.ridgeText}</p>
    </figure>
  );
}
