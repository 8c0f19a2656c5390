import { type LineDrawing, lossAt } from '@coreward/bench';
import { type JSX, memo } from 'react';

interface StaircaseProps {
  readonly drawing: LineDrawing;
  readonly length: number;
}

/** Room for the stairs, and for the words under them, CSS pixels. */
const measures = { stairs: 84, words: 26 } as const;

/** The light that is left, as stairs under the line: each part's loss is a step down beneath it. The table tells the rest. */
export const Staircase = memo(function Staircase({
  drawing: { parts },
  length,
}: StaircaseProps): JSX.Element {
  const { stairs, words } = measures;
  const level = (left: number) => (stairs * (1 - left)).toFixed(1);
  const first = parts[0];
  const treads = parts.map(({ part, label }) => `H${label.toFixed(1)}V${level(part.leaving)}`);
  const edge = `M${(first?.label ?? 0).toFixed(1)} ${level(1)}${treads.join('')}H${length.toFixed(1)}`;
  return (
    <svg className="staircase" aria-hidden="true" width={length} height={stairs + words}>
      <path className="stairs-light" d={`${edge}V${stairs}H${(first?.label ?? 0).toFixed(1)}Z`} />
      <path className="stairs-edge" d={edge} />
      {parts.map(({ part, label }) => {
        const loss = lossAt(part);
        return (
          loss !== null && (
            <text key={part.id} x={label} y={stairs + words - 8} textAnchor="middle">
              {loss}
            </text>
          )
        );
      })}
    </svg>
  );
});
