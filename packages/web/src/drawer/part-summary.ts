import { type FieldNode, type KeptPart, partFields, Refusal, unbroken } from '@coreward/bench';

/** What the unit of a value says already. */
const toldByUnit: ReadonlySet<string> = new Set(['wavelength', 'power']);

/** The first few things that are written about a part, besides its name: "520 nm ± 2 nm, waist diameter 0.84 mm". */
export function partSummary(part: KeptPart): string {
  try {
    return written(partFields(part)).slice(0, 3).map(unbroken).join(', ');
  } catch (error) {
    if (error instanceof Refusal) return '';
    throw error;
  }
}

function written(node: FieldNode): readonly string[] {
  switch (node.kind) {
    case 'group':
      return node.fields.flatMap(written);
    case 'quantity':
      return node.written === null ? [] : [told(node.key, node.written.text)];
    case 'word':
      return node.written === null || node.words.length < 4 ? [] : [node.written];
    case 'name':
    case 'count':
    case 'list':
      return [];
  }
}

const told = (key: string, text: string): string => (toldByUnit.has(key) ? text : `${key} ${text}`);
