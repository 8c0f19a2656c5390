import { type Block, printable, type Section } from '@coreward/bench';
import { tableLines } from './table-lines.ts';
import { wrap, wrapHanging } from './wrap.ts';

/** How wide the text may be, and whether headings may be bold. */
export interface TextStyle {
  readonly width: number;
  readonly bold: boolean;
}

/** Columns that the terms of a description take, with the gap behind them. */
const termWidth = 12;

/** Sections as plain text: headings at the margin, the rest indented by two. Ends in a line break. */
export function sectionsText(sections: readonly Section[], style: TextStyle): string {
  return sections
    .map(({ heading, blocks }) => {
      const lines = blocks.map((block) => blockLines(block, style.width).join('\n'));
      return [
        ...wrap(printable(heading, 400), style.width).map((line) => emphasised(line, style)),
        ...lines,
      ].join('\n');
    })
    .join('\n\n')
    .concat('\n');
}

function blockLines(block: Block, width: number): readonly string[] {
  switch (block.kind) {
    case 'text':
      return wrapHanging(clean(block.text), '  ', width);
    case 'terms':
      return block.rows.flatMap(({ term, text }) =>
        wrapHanging(clean(text), `  ${clean(term).padEnd(termWidth - 2)}`, width),
      );
    case 'list':
      return block.items.flatMap((item, i) =>
        wrapHanging(clean(item), block.numbered ? `  ${i + 1}. ` : '  - ', width),
      );
    case 'table':
      return tableLines(block, width);
  }
}

/** Names come from documents, and may hold what would move the cursor. */
const clean = (text: string): string => printable(text, 4000);

const emphasised = (line: string, { bold }: TextStyle): string =>
  bold ? `\u001b[1m${line}\u001b[22m` : line;
