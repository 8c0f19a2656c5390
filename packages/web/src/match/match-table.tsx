import { type MatchColumn, type MatchRow, matchColumns, sortedRows, unbroken } from '@coreward/bench';
import { type JSX, useState } from 'react';
import { matchTexts } from '../texts/match.ts';

/** Rows shown before anybody asks for more. */
const firstRows = 30;

/** All combinations as a table that can be sorted by any column. */
export function MatchTable({
  rows,
  withLaser,
  onMake,
}: {
  readonly rows: readonly MatchRow[];
  readonly withLaser: boolean;
  readonly onMake: (row: MatchRow) => void;
}): JSX.Element {
  const [column, setColumn] = useState<MatchColumn>('share');
  const [descending, setDescending] = useState(true);
  const [all, setAll] = useState(false);
  const sort = (next: MatchColumn): void => {
    const numbers = next === 'share' || next === 'power';
    setDescending(next === column ? !descending : numbers);
    setColumn(next);
  };
  const sorted = sortedRows(rows, column, descending);
  const columns = matchColumns.filter((each) => withLaser || each !== 'laser');
  return (
    <div className="scroll">
      <table className="match-table">
        <caption>{matchTexts.table}</caption>
        <thead>
          <tr>
            {columns.map((each) => (
              <th
                key={each}
                scope="col"
                className={`column-${each}`}
                aria-sort={each !== column ? 'none' : descending ? 'descending' : 'ascending'}
              >
                <button type="button" className="sort" onClick={() => sort(each)}>
                  {matchTexts.columns[each]}
                  <span aria-hidden="true">{each !== column ? '' : descending ? ' ↓' : ' ↑'}</span>
                </button>
              </th>
            ))}
            <th scope="col" className="column-plug">
              {matchTexts.plug}
            </th>
            <th scope="col" className="column-act no-print">
              {matchTexts.act}
            </th>
          </tr>
        </thead>
        <tbody>
          {(all ? sorted : sorted.slice(0, firstRows)).map((row) => (
            <tr key={`${row.laser}\n${row.collimator}\n${row.fibre}`}>
              {columns.map((each) => (
                <Cell key={each} row={row} column={each} />
              ))}
              <td
                className={`column-plug ${row.connector === 'must not meet' ? 'warn' : 'quiet'}`}
                data-label={matchTexts.plug}
              >
                {matchTexts.plugs[row.connector]}
              </td>
              <td className="no-print">
                <button
                  type="button"
                  className="quiet-button nowrap"
                  aria-label={matchTexts.makeLabel(matchTexts.combination(row.collimator, row.fibre))}
                  onClick={() => onMake(row)}
                >
                  {matchTexts.make}
                </button>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {rows.length > firstRows && !all && (
        <button type="button" className="quiet-button" onClick={() => setAll(true)}>
          {matchTexts.all(rows.length)}
        </button>
      )}
    </div>
  );
}

function Cell({ row, column }: { readonly row: MatchRow; readonly column: MatchColumn }): JSX.Element {
  switch (column) {
    case 'collimator':
      return <th scope="row">{unbroken(matchTexts.lens(row.collimator))}</th>;
    case 'laser':
    case 'fibre':
      return <td>{row[column]}</td>;
    case 'reason':
      return (
        <td className="column-reason">
          {unbroken(row.reason)}
          {row.otherModes !== null && (
            <>
              {' '}
              <small className="quiet">{unbroken(row.otherModes)}</small>
            </>
          )}
        </td>
      );
    case 'share':
    case 'power':
      return (
        <td className={`column-${column}`}>
          {row[column].text} <small className="quiet">{row[column].interval}</small>
        </td>
      );
  }
}
