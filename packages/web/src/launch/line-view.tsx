import {
  drawingText,
  drawLine,
  halvesText,
  type LightLine,
  lossAt,
  powerAt,
  powerRangeAt,
  unbroken,
} from '@coreward/bench';
import { type JSX, type KeyboardEvent, type ReactNode, useMemo, useRef } from 'react';
import { launchTexts } from '../texts/launch.ts';
import { LineGlyphs } from './line-glyphs.tsx';
import { LineLight } from './line-light.tsx';
import { Staircase } from './staircase.tsx';
import type { ForecastState } from './use-forecast.ts';
import { useWidth } from './use-width.ts';
import { type Run, veils } from './way.ts';

interface LineViewProps {
  readonly line: LightLine;
  /** The same, a moment older while a hand is at it: for stairs and hazards. */
  readonly rested: LightLine;
  /** W. */
  readonly laserPower: number;
  /** While a hand moves the light it is drawn with fewer veils. */
  readonly inHand: boolean;
  /** Whether the line has ranges, or why not. */
  readonly ranges: ForecastState['state'];
  /** The id of the part whose tag is open. */
  readonly chosen: string | null;
  readonly onChoose: (id: string | null) => void;
  /** What stands beside the labels of the parts: where it can hurt. */
  readonly hazards: (places: LabelPlaces) => ReactNode;
}

/** Where the labels of the parts are, CSS pixels along the run, and how much room each has. */
interface LabelPlaces {
  readonly run: Run;
  readonly labels: ReadonlyMap<string, number>;
  readonly room: number;
}

/** Measures of the drawing, CSS pixels. */
const measures = {
  // a range on one line, where there is room for it
  across: { half: 84, labelsAt: 128, label: 98, wide: 132 },
  // down: a name of two lines, and the powers below it
  down: { half: 44, labelsAt: 76, label: 88, least: 420 },
} as const;

/** The light line: picture, navigation and result at once. */
export function LineView(props: LineViewProps): JSX.Element {
  const { line, rested, laserPower, inHand, ranges, chosen, onChoose, hazards } = props;
  const [frame, width] = useWidth<HTMLDivElement>();
  const list = useRef<HTMLOListElement>(null);
  const { across, down } = measures;
  const run: Run = width >= line.parts.length * across.label && width >= 640 ? 'across' : 'down';
  const length = run === 'across' ? width : Math.max(down.least, line.parts.length * down.label);
  const { half, labelsAt } = measures[run];
  const label = run === 'across' ? Math.min(across.wide, Math.floor(width / line.parts.length)) : down.label;
  const older = useMemo(() => drawLine(rested, { length, half, label }), [rested, length, half, label]);
  const drawing = useMemo(
    () => (line === rested ? older : drawLine(line, { length, half, label }, older)),
    [line, rested, older, length, half, label],
  );
  const places = useMemo(
    () => ({ run, labels: new Map(older.parts.map((one) => [one.part.id, one.label])), room: label }),
    [older, run, label],
  );
  const axis = half + 2;
  const halves = halvesText(line, run);

  function move(event: KeyboardEvent<HTMLOListElement>): void {
    const step = { ArrowRight: 1, ArrowDown: 1, ArrowLeft: -1, ArrowUp: -1 }[event.key];
    const buttons = [...(list.current?.querySelectorAll('button') ?? [])];
    const here = buttons.indexOf(document.activeElement as HTMLButtonElement);
    if (here < 0) return;
    const to = event.key === 'Home' ? 0 : event.key === 'End' ? buttons.length - 1 : here + (step ?? 0);
    if (to === here) return;
    event.preventDefault();
    buttons[to]?.focus();
  }

  return (
    <div className={`line ${run}`} ref={frame}>
      {width > 0 && (
        <div className="line-paper" style={run === 'down' ? { height: length } : {}}>
          <svg
            aria-hidden="true"
            width={run === 'across' ? width : axis + labelsAt}
            height={run === 'across' ? axis + labelsAt : length}
          >
            <LineLight drawing={drawing} run={run} axis={axis} veils={inHand ? veils.inHand : veils.atRest} />
            <LineGlyphs {...{ drawing, chosen, run, axis, half, labelsAt }} />
          </svg>
          <ol ref={list} aria-label={launchTexts.lineParts} onKeyDown={move}>
            {drawing.parts.map(({ part, label: place }) => (
              <li
                key={part.id}
                style={
                  run === 'across'
                    ? { left: place - label / 2, width: label }
                    : { top: place - label / 2, height: label, left: axis + labelsAt }
                }
              >
                <button
                  type="button"
                  className="part"
                  id={`part-${part.id}`}
                  aria-expanded={part.id === chosen}
                  aria-controls="tag"
                  onClick={() => onChoose(part.id === chosen ? null : part.id)}
                >
                  <span className="part-name">{unbroken(part.name)}</span>
                  <span className="part-power">
                    {powerAt(part, laserPower)}
                    {run === 'down' && lossAt(part) !== null && ` ${lossAt(part)}`}
                  </span>
                  <span className="part-range range">
                    {part.powerRange === null
                      ? launchTexts.noRange[ranges]
                      : unbroken(powerRangeAt(part) ?? '')}
                  </span>
                </button>
              </li>
            ))}
          </ol>
          {run === 'across' && <Staircase drawing={older} length={length} />}
        </div>
      )}
      {width > 0 && hazards(places)}
      <p className="line-note">
        {drawingText(drawing, line)}
        {halves !== null && ` ${halves}`}
      </p>
    </div>
  );
}
