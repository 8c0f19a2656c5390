import { columnCount, columnSeparators, type LineFormat, linePreview, meterUnits } from '@coreward/bench';
import type { JSX } from 'react';
import { instrumentTexts } from '../../texts/instrument.ts';
import { Choice } from './choice.tsx';

const words = instrumentTexts.serial;
/** Lines that are shown; the rest look alike. */
const shown = 6;

/** How a device's lines are read, with some of them as they would be. */
export function LineForm({
  lines,
  format,
  onFormat,
}: {
  readonly lines: readonly string[];
  readonly format: LineFormat;
  readonly onFormat: (format: LineFormat) => void;
}): JSX.Element {
  const preview = linePreview(lines.slice(-shown), format);
  const columns = [...Array(columnCount(preview, format)).keys()];
  return (
    <fieldset className="setup-group">
      <legend>{words.form}</legend>
      <Choice
        label={words.separator}
        value={format.separator}
        values={columnSeparators}
        words={(one) => words.separators[one]}
        onChange={(separator) => onFormat({ ...format, separator })}
      />
      <Choice
        label={words.decimal}
        value={format.decimal}
        values={['point', 'comma'] as const}
        words={(one) => words.decimals[one]}
        onChange={(decimal) => onFormat({ ...format, decimal })}
      />
      <Choice
        label={words.column}
        value={format.column}
        values={columns}
        words={(one) => String(one + 1)}
        onChange={(column) => onFormat({ ...format, column })}
      />
      <Choice
        label={words.unit}
        value={format.unit}
        values={meterUnits}
        words={(one) => (one === 'counts' ? words.counts : one)}
        onChange={(unit) => onFormat({ ...format, unit })}
      />
      {preview.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
        <section className="scroll" tabIndex={0} aria-label={words.sample}>
          <table className="sample">
            <caption>{words.sample}</caption>
            <thead>
              <tr>
                {columns.map((column) => (
                  <th key={column} scope="col" className={column === format.column ? 'chosen' : ''}>
                    {words.columnHead(column + 1)}
                  </th>
                ))}
                <th scope="col">{words.reading}</th>
              </tr>
            </thead>
            <tbody>
              {preview.map((line, row) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: lines have no name but their rank
                <tr key={row}>
                  {columns.map((column) => (
                    <td key={column} className={column === format.column ? 'chosen' : ''}>
                      {line.columns[column] ?? ''}
                    </td>
                  ))}
                  <td>{line.reading ?? <span className="quiet">{words.noReading}</span>}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
    </fieldset>
  );
}
