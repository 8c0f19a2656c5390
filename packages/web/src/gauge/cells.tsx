import {
  emptyGrid,
  exampleHeading,
  type Gauge,
  type Grid,
  hasHeadings,
  missingColumns,
  textOfGrid,
  withCell,
  withHeading,
  withPasted,
} from '@coreward/bench';
import { type ClipboardEvent, type JSX, type KeyboardEvent, useRef } from 'react';
import { gaugeTexts } from '../texts/gauge.ts';

interface CellsProps {
  readonly gauge: Gauge;
  readonly grid: Grid;
  readonly onText: (text: string) => void;
  /** A pasted text that brings its own headings. */
  readonly onTable: (text: string) => void;
}

/** Readings cell by cell, with one more row than there are. */
export function Cells({ gauge, grid: given, onText, onTable }: CellsProps): JSX.Element {
  const table = useRef<HTMLTableElement>(null);
  const grid = given.headings.length === 0 ? { ...given, headings: emptyGrid(gauge).headings } : given;
  const { headings, rows } = grid;
  const write = (next: Grid): void => onText(textOfGrid(next));
  const paste = (event: ClipboardEvent, row: number, column: number): void => {
    const text = event.clipboardData.getData('text/plain');
    if (!/[\t\r\n;]/u.test(text.trim())) return;
    event.preventDefault();
    if (hasHeadings(text)) onTable(text);
    else write(withPasted(grid, row, column, text));
  };
  const move = (event: KeyboardEvent, row: number, column: number): void => {
    const step = event.key === 'ArrowUp' ? -1 : event.key === 'ArrowDown' || event.key === 'Enter' ? 1 : 0;
    const next = table.current?.querySelector<HTMLInputElement>(`[data-cell="${row + step} ${column}"]`);
    if (step === 0 || next == null) return;
    event.preventDefault();
    next.focus();
    next.select();
  };
  return (
    <>
      <div className="scroll">
        <table className="cells" ref={table}>
          <thead>
            <tr>
              <td />
              {headings.map((heading, column) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns have no name but what is typed
                <th key={column} scope="col">
                  <input
                    type="text"
                    size={heading.length}
                    aria-label={gaugeTexts.heading(column + 1)}
                    autoComplete="off"
                    spellCheck={false}
                    value={heading}
                    onChange={({ target }) => write(withHeading(grid, column, target.value))}
                    onPaste={(event) => paste(event, 0, column)}
                  />
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {[...rows, headings.map(() => '')].map((cells, row) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their rank
              <tr key={row}>
                <th scope="row">{row + 1}</th>
                {cells.map((cell, column) => (
                  // biome-ignore lint/suspicious/noArrayIndexKey: as above
                  <td key={column}>
                    <input
                      type="text"
                      inputMode="text"
                      data-cell={`${row} ${column}`}
                      aria-label={gaugeTexts.cell(headings[column] ?? '', row + 1)}
                      autoComplete="off"
                      spellCheck={false}
                      value={cell}
                      onChange={({ target }) => write(withCell(grid, row, column, target.value))}
                      onPaste={(event) => paste(event, row, column)}
                      onKeyDown={(event) => move(event, row, column)}
                    />
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <p className="facts no-print">
        {missingColumns(gauge, grid).map((spec) => (
          <button
            key={spec.name}
            type="button"
            className="quiet-button"
            onClick={() => write(withHeading(grid, headings.length, exampleHeading(spec)))}
          >
            {gaugeTexts.addColumn(spec.name)}
          </button>
        ))}
      </p>
    </>
  );
}
