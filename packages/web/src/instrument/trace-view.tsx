import { shifted, type TimeStretch, traceColumns, traceWords, unbroken, zoomed } from '@coreward/bench';
import type { InstrumentDescription } from '@coreward/contract';
import { type JSX, type KeyboardEvent, lazy, Suspense, useMemo, useState } from 'react';
import { useWidth } from '../launch/use-width.ts';
import { instrumentTexts } from '../texts/instrument.ts';
import { momentText } from './time-axis.ts';
import type { TraceMark } from './trace-plot.tsx';
import type { ReadingsHeld } from './use-readings.ts';
import { heldLength, useTrace, type TraceView as View } from './use-trace.ts';

const TracePlot = lazy(async () => ({ default: (await import('./trace-plot.tsx')).TracePlot }));

const noMarks: readonly TraceMark[] = [];
const words = instrumentTexts.trace;
/** How far one press goes: half as much or twice, and half a screen on. */
const step = { zoom: 2, shift: 0.5 } as const;

const lengths = [
  { length: heldLength, word: words.minute },
  { length: 600_000, word: words.tenMinutes },
  { length: 3_600_000, word: words.hour },
  { length: null, word: words.all },
] as const;

/** Readings of one instrument over any stretch of time, by hand, key or button. */
export function TraceView({
  instrument,
  held,
  marks = noMarks,
}: {
  readonly instrument: InstrumentDescription;
  readonly held: ReadingsHeld;
  /** Moments to be marked. */
  readonly marks?: readonly TraceMark[];
}): JSX.Element {
  const [place, width] = useWidth<HTMLDivElement>();
  const [view, setView] = useState<View>({ kind: 'latest', length: heldLength });
  const trace = useTrace(instrument.id, view, held, width);
  const buckets = trace?.buckets ?? null;
  const columns = useMemo(() => (buckets === null ? null : traceColumns(buckets)), [buckets]);
  const show = (stretch: TimeStretch): void => setView({ kind: 'stretch', stretch });
  const act = {
    nearer: (factor: number) => {
      if (trace === null) return;
      const { stretch, most } = trace;
      show(zoomed(stretch, factor, (stretch.from + stretch.to) / 2, most));
    },
    on: (share: number) => {
      if (trace !== null) show(shifted(trace.stretch, share, trace.most));
    },
  };
  const onKeyDown = (event: KeyboardEvent): void => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const done = keys(event.key);
    if (done === null) return;
    event.preventDefault();
    done();
  };
  function keys(key: string): (() => void) | null {
    switch (key) {
      case 'ArrowLeft':
        return () => act.on(-step.shift / 5);
      case 'ArrowRight':
        return () => act.on(step.shift / 5);
      case '+':
      case '=':
        return () => act.nearer(step.zoom);
      case '-':
        return () => act.nearer(1 / step.zoom);
      case 'Home':
        return () => setView({ kind: 'latest', length: null });
      case 'End':
        return () => setView({ kind: 'latest', length: heldLength });
      default:
        return null;
    }
  }
  return (
    <section className="trace" aria-label={words.title}>
      <p className="choices">
        {lengths.map(({ length, word }) => (
          <button
            key={word}
            type="button"
            className="quiet-button"
            aria-pressed={view.kind === 'latest' && view.length === length}
            onClick={() => setView({ kind: 'latest', length })}
          >
            {word}
          </button>
        ))}
        <button type="button" className="quiet-button" onClick={() => act.nearer(step.zoom)}>
          {words.zoomIn}
        </button>
        <button type="button" className="quiet-button" onClick={() => act.nearer(1 / step.zoom)}>
          {words.zoomOut}
        </button>
        <button type="button" className="quiet-button" onClick={() => act.on(-step.shift)}>
          {words.earlier}
        </button>
        <button type="button" className="quiet-button" onClick={() => act.on(step.shift)}>
          {words.later}
        </button>
      </p>
      {/* biome-ignore lint/a11y/useSemanticElements: a group of nothing but a picture that keys move */}
      <div
        ref={place}
        className="trace-place"
        role="group"
        aria-label={words.about}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: keys move it
        tabIndex={0}
        onKeyDown={onKeyDown}
      >
        {trace === null && held.state === 'held' && <p className="quiet">{words.nothing}</p>}
        {trace !== null && columns !== null && width > 0 && (
          <Suspense fallback={<p className="quiet">{words.opening}</p>}>
            <TracePlot
              columns={columns}
              stretch={trace.stretch}
              most={trace.most}
              unit={instrument.unit}
              marks={marks}
              width={width}
              onStretch={show}
            />
          </Suspense>
        )}
      </div>
      {trace !== null && (
        <p className="trace-words">
          <span className="quiet">{words.span(momentText(trace.told.from), momentText(trace.told.to))}.</span>{' '}
          {unbroken(traceWords(trace.buckets, instrument.unit))}
        </p>
      )}
      {trace?.failed === true && (
        <p role="alert" className="refusal">
          {words.failed}
        </p>
      )}
      <p className="quiet small no-print">{words.hint}</p>
    </section>
  );
}
