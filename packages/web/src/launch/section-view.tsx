import type { Block, Cell, Row, Section, Table } from '@coreward/bench';
import type { JSX } from 'react';

/** A piece of what bench says, set for a screen. */
export function SectionView({
  section,
  className = 'words',
}: {
  readonly section: Section;
  readonly className?: string;
}): JSX.Element {
  return (
    <section className={className}>
      <h2>{section.heading}</h2>
      <Blocks blocks={section.blocks} />
    </section>
  );
}

/** Texts, terms, lists and tables, one below the other. */
export function Blocks({ blocks }: { readonly blocks: readonly Block[] }): JSX.Element {
  return (
    <>
      {blocks.map((block, i) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: blocks have no name but their rank
        <BlockView key={i} block={block} />
      ))}
    </>
  );
}

function BlockView({ block }: { readonly block: Block }): JSX.Element {
  switch (block.kind) {
    case 'text':
      return <p>{block.text}</p>;
    case 'terms':
      return (
        <dl>
          {block.rows.map(({ term, text }) => (
            <div key={term}>
              <dt>{term}</dt>
              <dd>{text}</dd>
            </div>
          ))}
        </dl>
      );
    case 'list': {
      const items = block.items.map((item) => <li key={item}>{item}</li>);
      return block.numbered ? <ol>{items}</ol> : <ul>{items}</ul>;
    }
    case 'table':
      return <TableView table={block} />;
  }
}

function TableView({ table: { columns, rows } }: { readonly table: Table }): JSX.Element {
  return (
    <div className="scrolls">
      <table>
        <thead>
          <tr>
            {columns.map(({ heading, align }, i) =>
              heading === '' ? (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns have no name but their rank
                <td key={i} />
              ) : (
                // biome-ignore lint/suspicious/noArrayIndexKey: columns have no name but their rank
                <th key={i} scope="col" className={align}>
                  {heading}
                </th>
              ),
            )}
          </tr>
        </thead>
        <tbody>
          {rows.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no name but their rank
            <RowView key={i} row={row} columns={columns} />
          ))}
        </tbody>
      </table>
    </div>
  );
}

function RowView({ row, columns }: { readonly row: Row; readonly columns: Table['columns'] }): JSX.Element {
  switch (row.kind) {
    case 'rule':
      return (
        <tr>
          <td colSpan={columns.length} className="rule" />
        </tr>
      );
    case 'heading':
      return (
        <tr>
          <th scope="rowgroup" colSpan={columns.length} className="left">
            {row.text}
          </th>
        </tr>
      );
    case 'cells':
      return (
        <tr>
          {row.cells.map((cell, i) =>
            i === 0 ? (
              // biome-ignore lint/suspicious/noArrayIndexKey: cells have no name but their rank
              <th key={i} scope="row" className={columns[i]?.align}>
                {cellText(cell)}
              </th>
            ) : (
              // biome-ignore lint/suspicious/noArrayIndexKey: cells have no name but their rank
              <td key={i} className={columns[i]?.align}>
                {cellText(cell)}
              </td>
            ),
          )}
        </tr>
      );
  }
}

/** What a bar shows stands in figures beside it. */
const cellText = (cell: Cell): string => (typeof cell === 'string' ? cell.trim() : '');
