import { brightness, type LineDrawing } from '@coreward/bench';
import type { JSX } from 'react';
import { outline, type Run, toPage, veils } from './way.ts';

interface LineLightProps {
  readonly drawing: LineDrawing;
  readonly run: Run;
  readonly axis: number;
  readonly length: number;
}

/** The light itself: as wide as the beam is drawn, fading to its edge, dimmer behind each part that takes some. */
export function LineLight({ drawing, run, axis, length }: LineLightProps): JSX.Element {
  const at = toPage(run, axis);
  const stops = drawing.parts.flatMap(({ part, along }) => [
    { id: `${part.id} before`, along, left: part.arriving },
    { id: `${part.id} behind`, along, left: part.leaving },
  ]);
  const ends = run === 'across' ? { x1: 0, x2: length, y1: 0, y2: 0 } : { x1: 0, x2: 0, y1: 0, y2: length };
  const { from, to } = drawing.fibre;
  const middle = (from + to) / 2;
  const loop = (to - from) / 5;
  const radius = loop.toFixed(1);
  const turn = run === 'across' ? `a${radius} ${radius} 0 1 0 0.1 0` : `a${radius} ${radius} 0 1 1 0 0.1`;
  const strand = `M${at(from, 0)}L${at(middle, 0)}${turn}M${at(middle, 0)}L${at(to, 0)}`;
  return (
    <>
      <defs>
        <linearGradient id="left-along-the-light" gradientUnits="userSpaceOnUse" {...ends}>
          {stops.map(({ id, along, left }) => (
            <stop
              key={id}
              offset={along / length}
              style={{ stopColor: 'var(--accent)', stopOpacity: brightness(left) }}
            />
          ))}
        </linearGradient>
      </defs>
      <path className="strand" d={strand} />
      <g className="light">
        {veils.map(({ share, opacity }) => (
          <path
            key={share}
            d={outline(drawing.toFacet, share, at) + outline(drawing.beyond, share, at)}
            fillOpacity={opacity}
          />
        ))}
      </g>
      <path className="strand-light" d={strand} />
    </>
  );
}
