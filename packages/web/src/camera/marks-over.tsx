import {
  type CardSpot,
  markAfterKey,
  markAt,
  type PictureSize,
  type Point,
  spotEllipse,
} from '@coreward/bench';
import { type JSX, type PointerEvent, useRef } from 'react';
import { cameraTexts } from '../texts/camera.ts';

interface MarksOverProps {
  readonly size: PictureSize;
  readonly marks: readonly Point[];
  readonly onMarks: (marks: readonly Point[]) => void;
  /** Spots that were found, with the word that says which. */
  readonly spots: readonly { readonly name: 'live' | 'kept'; readonly spot: CardSpot }[];
}

const ways: Readonly<Record<string, 'left' | 'right' | 'up' | 'down'>> = {
  ArrowLeft: 'left',
  ArrowRight: 'right',
  ArrowUp: 'up',
  ArrowDown: 'down',
};

/** Marks on a ruler or a rectangle, each to be dragged or moved by keys, and the spots that are seen. */
export function MarksOver({ size, marks, onMarks, spots }: MarksOverProps): JSX.Element {
  const { width, height } = size;
  const dragged = useRef<number | null>(null);
  const surface = useRef<SVGSVGElement>(null);
  const put = (rank: number, mark: Point): void => onMarks(marks.with(rank, mark));
  const drag = ({ clientX, clientY }: PointerEvent): void => {
    const box = surface.current?.getBoundingClientRect();
    if (dragged.current === null || box === undefined) return;
    put(
      dragged.current,
      markAt({ x: (clientX - box.left) / box.width, y: (clientY - box.top) / box.height }, size),
    );
  };
  const arm = width / 40;
  return (
    // biome-ignore lint/a11y/useSemanticElements: a fieldset cannot be a drawing
    <svg
      ref={surface}
      className="camera-over marks"
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label={cameraTexts.marks}
    >
      {marks.length > 1 && (
        <polygon
          className="camera-line"
          points={marks.map(({ x, y }) => `${x + 0.5},${y + 0.5}`).join(' ')}
        />
      )}
      {spots.map(({ name, spot }) => {
        const { x, y, major, minor, degrees } = spotEllipse(spot);
        return (
          <ellipse
            key={name}
            className={`camera-spot ${name}`}
            cx={x}
            cy={y}
            rx={major}
            ry={minor}
            transform={`rotate(${degrees} ${x} ${y})`}
          />
        );
      })}
      {marks.map(({ x, y }, rank) => (
        // biome-ignore lint/a11y/useSemanticElements: a button cannot stand in a drawing
        <g
          // biome-ignore lint/suspicious/noArrayIndexKey: marks have no name but their rank
          key={rank}
          className="camera-mark"
          role="button"
          tabIndex={0}
          aria-label={cameraTexts.mark(rank + 1, x, y)}
          onPointerDown={(event) => {
            event.currentTarget.setPointerCapture(event.pointerId);
            dragged.current = rank;
          }}
          onPointerMove={drag}
          onPointerUp={() => {
            dragged.current = null;
          }}
          onKeyDown={(event) => {
            const way = ways[event.key];
            if (way === undefined) return;
            event.preventDefault();
            put(rank, markAfterKey({ x, y }, way, event.shiftKey ? 'coarse' : 'fine', size));
          }}
        >
          <circle className="camera-grip" cx={x + 0.5} cy={y + 0.5} r={arm * 1.4} />
          <line x1={x + 0.5 - arm} x2={x + 0.5 + arm} y1={y + 0.5} y2={y + 0.5} />
          <line x1={x + 0.5} x2={x + 0.5} y1={y + 0.5 - arm} y2={y + 0.5 + arm} />
        </g>
      ))}
    </svg>
  );
}
