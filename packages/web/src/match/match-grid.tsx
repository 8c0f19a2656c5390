import { type MatchRow, matchMap, unbroken } from '@coreward/bench';
import { type CSSProperties, type JSX, type KeyboardEvent, useState } from 'react';
import { matchTexts } from '../texts/match.ts';

/** One laser's combinations as a map, lens by fibre: each share in figures, and as a shade. */
export function MatchGrid({
  rows,
  laser,
  colour,
  onMake,
}: {
  readonly rows: readonly MatchRow[];
  readonly laser: string;
  /** The colour of its light. */
  readonly colour: string | null;
  readonly onMake: (row: MatchRow) => void;
}): JSX.Element {
  const { collimators, fibres, cells } = matchMap(rows, laser);
  const [chosen, setChosen] = useState<MatchRow | null>(null);
  const [at, setAt] = useState<readonly [number, number]>([0, 0]);
  const shown = chosen !== null && rows.includes(chosen) && chosen.laser === laser ? chosen : null;
  const move = (event: KeyboardEvent<HTMLElement>): void => {
    const step = steps[event.key];
    if (step === undefined) return;
    event.preventDefault();
    const line = clamp(at[0] + step[0], collimators.length);
    const column = clamp(at[1] + step[1], fibres.length);
    setAt([line, column]);
    event.currentTarget
      .closest('table')
      ?.querySelector<HTMLElement>(`[data-cell="${line} ${column}"]`)
      ?.focus();
  };
  return (
    <section style={colour === null ? undefined : ({ '--accent': colour } as CSSProperties)}>
      <div className="scroll">
        <table className="match-map">
          <caption>
            <span className="map-title">{matchTexts.map(laser)}</span>{' '}
            <span className="quiet no-print">{matchTexts.mapHint}</span>
          </caption>
          <thead>
            <tr>
              <th scope="col">{matchTexts.mapLens}</th>
              {fibres.map((fibre) => (
                <th key={fibre} scope="col">
                  {fibre}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {cells.map((line, i) => (
              <tr key={collimators[i]}>
                <th scope="row">{unbroken(matchTexts.lens(collimators[i] ?? ''))}</th>
                {line.map((cell, j) => (
                  <td key={fibres[j]}>
                    <button
                      type="button"
                      className="map-cell"
                      data-cell={`${i} ${j}`}
                      tabIndex={i === at[0] && j === at[1] ? 0 : -1}
                      aria-pressed={cell !== null && cell === shown}
                      style={{ '--share': cell?.share.value ?? 0 } as CSSProperties}
                      onFocus={() => setAt([i, j])}
                      onKeyDown={move}
                      onClick={() => setChosen(cell)}
                    >
                      {cell === null ? matchTexts.leftOutCell : cell.share.text}
                    </button>
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <div className="chosen" role="status">
        {shown !== null && (
          <>
            <p>
              <strong>{matchTexts.combination(shown.collimator, shown.fibre)}</strong>: {shown.share.text}{' '}
              <span className="quiet">({shown.share.interval})</span>, {shown.power.text}{' '}
              <span className="quiet">({shown.power.interval})</span>
            </p>
            <p>{shown.reason}</p>
            {shown.connectorNote !== null && <p className="warn">{shown.connectorNote}</p>}
            <button type="button" onClick={() => onMake(shown)}>
              {matchTexts.make}
            </button>
          </>
        )}
      </div>
    </section>
  );
}

const steps: Readonly<Record<string, readonly [number, number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

const clamp = (index: number, count: number): number => Math.min(Math.max(index, 0), count - 1);
