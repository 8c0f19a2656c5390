import {
  axisWords,
  between,
  pinched,
  type ReadingUnit,
  type TimeStretch,
  type TraceColumns,
  zoomed,
} from '@coreward/bench';
import { type JSX, useEffect, useRef } from 'react';
import uPlot from 'uplot';
import 'uplot/dist/uPlot.min.css';
import { axisTimes } from './time-axis.ts';

interface TracePlotProps {
  readonly columns: TraceColumns;
  readonly stretch: TimeStretch;
  readonly most: TimeStretch;
  readonly unit: ReadingUnit;
  /** Moments that are marked, ms, each with a word or a number. */
  readonly marks?: readonly TraceMark[];
  /** Inner width, CSS pixels. */
  readonly width: number;
  /** A hand has chosen another stretch. */
  readonly onStretch: (stretch: TimeStretch) => void;
}

/** A moment that is marked on a trace. */
export interface TraceMark {
  /** ms since 1970. */
  readonly t: number;
  readonly text: string;
}

const height = 240;
/** What one click of a wheel does. */
const wheelFactor = 1.25;
/** A pointer that has moved less has pressed, and chosen nothing; CSS pixels. */
const leastDrag = 6;

/** Readings over time: a band from the lowest to the highest, the mean as a line. */
export function TracePlot(props: TracePlotProps): JSX.Element {
  const place = useRef<HTMLDivElement>(null);
  const plot = useRef<uPlot | null>(null);
  /** What the plot's own callbacks look up; they outlive a drawing. */
  const now = useRef(props);
  now.current = props;
  const { columns, stretch, unit, width, marks } = props;

  useEffect(() => {
    const here = place.current;
    if (here === null) return;
    const made = new uPlot(optionsOf(now), dataOf(now.current.columns), here);
    plot.current = made;
    const stop = handle(made, now);
    // colours are read when it is drawn
    const themes = new MutationObserver(() => made.redraw(false));
    themes.observe(document.documentElement, { attributes: true, attributeFilter: ['data-theme'] });
    return () => {
      themes.disconnect();
      stop();
      made.destroy();
      plot.current = null;
    };
  }, []);
  useEffect(() => {
    plot.current?.setSize({ width, height });
  }, [width]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the axis is drawn in the unit
  useEffect(() => {
    plot.current?.setData(dataOf(columns));
  }, [columns, unit]);
  useEffect(() => {
    plot.current?.setScale('x', { min: stretch.from, max: stretch.to });
  }, [stretch.from, stretch.to]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: marks are looked up when it is drawn
  useEffect(() => {
    plot.current?.redraw(false);
  }, [marks]);
  return <div ref={place} className="trace-plot" />;
}

const dataOf = ({ times, low, high, middle, full }: TraceColumns): uPlot.AlignedData =>
  [times, low, high, middle, full] as unknown as uPlot.AlignedData;

type Now = { current: TracePlotProps };

const colour = (name: string) => (): string =>
  getComputedStyle(document.documentElement).getPropertyValue(name).trim();
const faint = (name: string) => (): string => `${colour(name)()}40`;

function optionsOf(now: Now): uPlot.Options {
  const axis: uPlot.Axis = {
    stroke: colour('--quiet'),
    grid: { stroke: colour('--line'), width: 1 },
    ticks: { show: false },
    font: '12px system-ui, sans-serif',
  };
  return {
    width: now.current.width,
    height,
    ms: 1,
    legend: { show: false },
    cursor: { show: false },
    scales: {
      x: { time: true, range: () => [now.current.stretch.from, now.current.stretch.to] },
      y: { range: (_, low, high) => roomFor(low, high) },
    },
    axes: [
      {
        ...axis,
        size: 34,
        space: 90,
        values: (_, moments, _axis, _space, apart) => axisTimes(moments, apart),
      },
      {
        ...axis,
        size: 78,
        values: (_, values) => {
          if (values.length === 0) return [];
          const { numbers, unit } = axisWords(values, now.current.unit);
          return numbers.map((number, index) =>
            index === numbers.length - 1 && unit !== '' ? `${number} ${unit}` : number,
          );
        },
      },
    ],
    series: [
      {},
      { points: { show: false }, stroke: faint('--accent'), width: 1 },
      { points: { show: false }, stroke: faint('--accent'), width: 1 },
      { stroke: colour('--accent'), width: 1.5, points: { size: 4, fill: colour('--accent') } },
      {
        paths: () => null,
        stroke: colour('--warn'),
        points: { show: true, size: 9, width: 1.5, fill: 'transparent' },
      },
    ],
    bands: [{ series: [2, 1], fill: faint('--accent') }],
    hooks: { draw: [(plot) => drawMarks(plot, now.current.marks ?? [])] },
  };
}

/** A line at each mark, with its word at the top; of words too close for all, the later stay. */
function drawMarks({ ctx, bbox, scales, valToPos }: uPlot, marks: readonly TraceMark[]): void {
  const { min = null, max = null } = scales.x ?? {};
  if (min === null || max === null) return;
  ctx.save();
  ctx.strokeStyle = colour('--quiet')();
  ctx.fillStyle = colour('--ink')();
  ctx.lineWidth = devicePixelRatio;
  ctx.font = `${12 * devicePixelRatio}px system-ui, sans-serif`;
  ctx.textBaseline = 'top';
  let free = Number.POSITIVE_INFINITY;
  for (const { t, text } of marks.filter((mark) => mark.t >= min && mark.t <= max).reverse()) {
    const x = valToPos(t, 'x', true);
    ctx.beginPath();
    ctx.moveTo(x, bbox.top);
    ctx.lineTo(x, bbox.top + bbox.height);
    ctx.stroke();
    if (x + ctx.measureText(text).width + 6 * devicePixelRatio > free) continue;
    ctx.fillText(text, x + 3 * devicePixelRatio, bbox.top);
    free = x;
  }
  ctx.restore();
}

/** A little room above and below, also where nothing varies. */
function roomFor(low: number | null, high: number | null): [number, number] {
  if (low === null || high === null) return [0, 1];
  return uPlot.rangeNum(low, high, 0.08, true) as [number, number];
}

/** Drag chooses, two fingers pinch, Ctrl and the wheel zoom. Returns how to let go of it. */
function handle({ over, root }: uPlot, now: Now): () => void {
  const fingers = new Map<number, number>();
  let from: { readonly id: number; readonly x: number } | null = null;
  const mark = document.createElement('div');
  mark.className = 'trace-choice';
  over.append(mark);
  const shareAt = (event: { readonly clientX: number }): number => {
    const { left, width } = over.getBoundingClientRect();
    return (event.clientX - left) / width;
  };
  const timeAt = (share: number): number => {
    const { stretch } = now.current;
    return stretch.from + share * (stretch.to - stretch.from);
  };
  const show = (stretch: TimeStretch): void => {
    // two fingers move in two events before anything is drawn: the second must know of the first
    now.current = { ...now.current, stretch };
    now.current.onStretch(stretch);
  };
  const draw = (one: number, other: number): void => {
    const [left, right] = one < other ? [one, other] : [other, one];
    mark.style.left = `${100 * left}%`;
    mark.style.width = `${100 * (right - left)}%`;
  };
  const onDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    over.setPointerCapture(event.pointerId);
    fingers.set(event.pointerId, shareAt(event));
    from = fingers.size === 1 ? { id: event.pointerId, x: event.clientX } : null;
    draw(0, 0);
  };
  const onMove = (event: PointerEvent): void => {
    const before = fingers.get(event.pointerId);
    if (before === undefined) return;
    const share = shareAt(event);
    const [other] = [...fingers].filter(([id]) => id !== event.pointerId);
    if (other !== undefined) {
      const { stretch, most } = now.current;
      show(pinched(stretch, ordered(before, other[1]), ordered(share, other[1]), most));
      fingers.set(event.pointerId, share);
    } else if (from !== null) draw(before, share);
  };
  const onUp = (event: PointerEvent): void => {
    const begun = fingers.get(event.pointerId);
    fingers.delete(event.pointerId);
    draw(0, 0);
    if (begun === undefined || from?.id !== event.pointerId || event.type !== 'pointerup') return;
    const moved = event.clientX - from.x;
    from = null;
    if (moved * moved < leastDrag * leastDrag) return;
    show(between(timeAt(begun), timeAt(shareAt(event)), now.current.most));
  };
  const onWheel = (event: WheelEvent): void => {
    // without Ctrl the wheel moves the page; fingers on a touchpad that zoom come as the wheel with Ctrl
    if (!event.ctrlKey && !event.metaKey) return;
    event.preventDefault();
    const { stretch, most } = now.current;
    const factor = event.deltaY < 0 ? wheelFactor : 1 / wheelFactor;
    show(zoomed(stretch, factor, timeAt(shareAt(event)), most));
  };
  over.addEventListener('pointerdown', onDown);
  over.addEventListener('pointermove', onMove);
  over.addEventListener('pointerup', onUp);
  over.addEventListener('pointercancel', onUp);
  root.addEventListener('wheel', onWheel, { passive: false });
  return () => root.removeEventListener('wheel', onWheel);
}

const ordered = (one: number, other: number): readonly [number, number] =>
  one < other ? [one, other] : [other, one];
