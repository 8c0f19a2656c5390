import { type CurvePaper, drawCurve, type GaugeCurve } from '@coreward/bench';
import { type JSX, useId, useMemo } from 'react';
import { useWidth } from '../launch/use-width.ts';
import { gaugeTexts } from '../texts/gauge.ts';

const height = 358;
const margin = { left: 62, right: 10, top: 26, foot: 44 };

/** Readings, the fit through them, and what it leaves over. */
export function CurveView({ curve }: { readonly curve: GaugeCurve }): JSX.Element {
  const [element, width] = useWidth<HTMLElement>();
  const id = useId();
  const drawing = useMemo(() => {
    const paper: CurvePaper = { width, height, below: 96, margin };
    return width < 100 ? null : drawCurve(curve, paper);
  }, [curve, width]);
  return (
    <figure className="curve" ref={element}>
      <figcaption>
        {curve.title}{' '}
        <span className="curve-legend">
          <Key /> {gaugeTexts.legend.reading} <FitKey /> {gaugeTexts.legend.fit}
        </span>
      </figcaption>
      {drawing !== null && (
        <svg viewBox={`0 0 ${width} ${height}`} width={width} height={height} role="img" aria-labelledby={id}>
          <title id={id}>{gaugeTexts.curve(drawing.title)}</title>
          <g className="curve-frame">
            {drawing.upTicks.map(({ at, text }) => (
              <g key={text}>
                <line x1={drawing.frame.left} x2={drawing.frame.right} y1={at} y2={at} />
                <text x={drawing.frame.left} dx={-6} y={at} dy="0.32em" textAnchor="end">
                  {text}
                </text>
              </g>
            ))}
            {drawing.acrossTicks.map(({ at, text }) => (
              <g key={text}>
                <line x1={at} x2={at} y1={drawing.frame.top} y2={drawing.frame.bottom} />
                <text x={at} y={drawing.frame.bottom} dy={15} textAnchor="middle">
                  {text}
                </text>
              </g>
            ))}
            <text x={drawing.frame.right} y={drawing.frame.bottom} dy={33} textAnchor="end">
              {drawing.across}
            </text>
            <text x={drawing.frame.left} y={drawing.frame.top} dy={-10}>
              {drawing.up}
            </text>
            <line
              className="curve-zero"
              x1={drawing.frame.left}
              x2={drawing.frame.right}
              y1={drawing.zero}
              y2={drawing.zero}
            />
            <text x={drawing.frame.left} y={drawing.zero} dx={-6} dy="0.32em" textAnchor="end">
              0
            </text>
            <text x={drawing.frame.left} y={drawing.zero} dy={-43}>
              {`${gaugeTexts.residuals}, ${gaugeTexts.reach(drawing.residualReach)}`}
            </text>
          </g>
          <path className="curve-fit" d={pathThrough(drawing.fit)} />
          <path className="curve-readings" d={dotsAt(drawing.readings)} />
          <path className="curve-readings" d={dotsAt(drawing.residuals)} />
        </svg>
      )}
    </figure>
  );
}

type Marks = readonly { readonly x: number; readonly y: number }[];

const pathThrough = (marks: Marks): string =>
  marks.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

/** One path for all: round caps make a line without length a dot. */
const dotsAt = (marks: Marks): string => marks.map(({ x, y }) => `M${x} ${y}h0`).join('');

const Key = (): JSX.Element => (
  <svg width="14" height="10" aria-hidden="true">
    <path className="curve-readings" d="M7 5h0" />
  </svg>
);
const FitKey = (): JSX.Element => (
  <svg width="22" height="10" aria-hidden="true">
    <path className="curve-fit" d="M1 5h20" />
  </svg>
);
